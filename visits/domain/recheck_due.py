"""When a foot must be looked at again, by the figures of `recheck_figures`."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesion_names import family_of
from visits.domain.lesions import LESIONS
from visits.domain.mobility import is_lame
from visits.domain.recheck_figures import Days, FigureOutOfRange, RecheckFigures

__all__ = [
    "Days",
    "FigureOutOfRange",
    "RecheckCause",
    "RecheckDue",
    "RecheckFigures",
    "StandingBlock",
    "block_off_due",
    "rechecks_for",
]

BY_HAND_SPAN = 7
"""Days within which a look that was set by hand is to fall: a week, as wide as the span of a wooden block, so that the
feet of one farm can still be gathered into one visit."""


class RecheckCause(StrEnum):
    """Why a foot is looked at again."""

    BLOCK = "block"
    LESION = "lesion"
    LAME_TRIM = "lame_trim"
    BY_HAND = "by_hand"

    @property
    def label(self) -> str:
        return {
            RecheckCause.BLOCK: "Block to come off",
            RecheckCause.LESION: "Lesion to look at",
            RecheckCause.LAME_TRIM: "Lame cow, trimmed only",
            RecheckCause.BY_HAND: "To be looked at again",
        }[self]


@dataclass(frozen=True)
class RecheckDue:
    """One foot to be looked at again between two days, both included, and why in words."""

    foot: Foot
    cause: RecheckCause
    what: str
    due_from: date
    due_until: date


@dataclass(frozen=True)
class StandingBlock:
    """A block put on at an earlier visit and not yet taken off."""

    foot: Foot
    claw: Claw
    kind: BlockKind
    put_on: date


def block_off_due(kind: BlockKind, on: date, figures: RecheckFigures) -> date:
    """The day by which a block put on `on` is to be off."""
    return on + timedelta(days=figures.block[kind][1])


def rechecks_for(
    entry: CowEntry, on: date, figures: RecheckFigures, standing: Sequence[StandingBlock] = ()
) -> list[RecheckDue]:
    """At most one re-check for each foot of a cow trimmed on `on`: the one that is due first.

    Two reasons on one foot are seen to in one look, and the earlier look must not wait for the later. `standing`
    blocks of a lifted foot, unless taken off or replaced now, keep their own days: looking at the foot for another
    reason must not lose them. Days set by hand take the place of the rule's for what was seen and done now.
    """
    found = []
    for foot in entry.feet:
        left_on = [block for block in standing if _is_left_on(block, foot)]
        reasons = _by_hand(foot, on, _reasons(foot, entry, on, figures))
        found.append(_most_pressing(reasons + _still_on(left_on, on, figures)))
    return [due for due in found if due is not None]


def _by_hand(foot: FootEntry, on: date, reasons: list[RecheckDue]) -> list[RecheckDue]:
    """The rule's reasons under the trimmer's own days. "No need" (0) does not let a block out of sight."""
    days = foot.look_again_days
    if days is None:
        return reasons
    if days == 0:
        return [due for due in reasons if due.cause is RecheckCause.BLOCK]
    rule = _most_pressing(reasons)
    cause, what = (rule.cause, rule.what) if rule else (RecheckCause.BY_HAND, "to be looked at again")
    return [_due(foot.foot, cause, what, on, (days, days + BY_HAND_SPAN))]


def _is_left_on(block: StandingBlock, foot: FootEntry) -> bool:
    changed = [
        action.claw
        for action in foot.actions
        if action.kind in (ActionKind.BLOCK_OFF, ActionKind.BLOCK) and action.claw in (None, block.claw)
    ]
    return block.foot is foot.foot and not changed


def _still_on(blocks: list[StandingBlock], on: date, figures: RecheckFigures) -> list[RecheckDue]:
    return [
        RecheckDue(
            block.foot,
            RecheckCause.BLOCK,
            f"{block.kind.label} on {block.claw.label}",
            max(on, block.put_on + timedelta(days=figures.block[block.kind][0])),
            max(on, block_off_due(block.kind, block.put_on, figures)),
        )
        for block in blocks
    ]


def _reasons(foot: FootEntry, entry: CowEntry, on: date, figures: RecheckFigures) -> list[RecheckDue]:
    reasons = [
        _due(foot.foot, RecheckCause.BLOCK, f"{block.block_kind.label} on {_claw(block.claw)}", on, days)
        for block in foot.blocks()
        if block.block_kind is not None and (days := figures.block[block.block_kind])
    ]
    for finding in foot.findings:
        if again := _lesion_days(finding, figures):
            reasons.append(_due(foot.foot, RecheckCause.LESION, LESIONS[finding.lesion].name, on, again))
    if not reasons and foot.actions and _walked_in_lame(entry) and (foot.findings or foot.has_pain):
        reasons.append(
            _due(foot.foot, RecheckCause.LAME_TRIM, "lame, trimmed only: score again", on, figures.lame_trim)
        )
    return reasons


def _lesion_days(finding: FindingEntry, figures: RecheckFigures) -> Days | None:
    """None also for digital dermatitis without a live sore (M0, M3, M4): there is nothing to look at again."""
    if finding.dd_stage is not None and not finding.dd_stage.is_active:
        return None
    return figures.lesion.get(finding.lesion) or figures.lesion.get(family_of(finding.lesion))


def _walked_in_lame(entry: CowEntry) -> bool:
    if entry.mobility_scale is None or entry.mobility_score is None:
        return False
    return is_lame(entry.mobility_scale, entry.mobility_score)


def _due(foot: Foot, cause: RecheckCause, what: str, on: date, days: Days) -> RecheckDue:
    return RecheckDue(foot, cause, what, on + timedelta(days=days[0]), on + timedelta(days=days[1]))


def _most_pressing(reasons: list[RecheckDue]) -> RecheckDue | None:
    if not reasons:
        return None
    first = min(reasons, key=lambda due: (due.due_until, due.due_from))
    words = "; ".join(dict.fromkeys(due.what for due in reasons))
    return RecheckDue(first.foot, first.cause, words, first.due_from, first.due_until)


def _claw(claw: Claw | None) -> str:
    return claw.label if claw else "foot"
