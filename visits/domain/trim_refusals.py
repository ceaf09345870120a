"""What cannot be put down because it contradicts itself or would harm (T8)."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from visits.domain.actions import CORRECTIVE_STEPS, FUNCTIONAL_STEPS, ActionKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot, is_zone
from visits.domain.lesions import LESIONS, LesionCode, LesionGroup

HURTS_WHEN_LOADED = frozenset({LesionGroup.CLAW_HORN})


@dataclass(frozen=True)
class Refusal:
    """A fault that must be mended before the cow is kept: the rule, the foot, what to mend, and where in the entry."""

    rule: str
    foot: Foot | None
    text: str
    field: str = ""


def refusals(entry: CowEntry) -> list[Refusal]:
    """Every fault of an entry; empty when it can be kept. Rules T8 and T10 are common practice, no source."""
    of_feet = (
        replace(fault, field=f"feet[{place}].{fault.field}")
        for place, foot in enumerate(entry.feet)
        for fault in _foot_faults(foot)
    )
    return [*_cow_faults(entry), *of_feet]


def sore_claws(foot: FootEntry) -> frozenset[Claw]:
    """The claws of a foot on which a painful lesion of the horn was seen."""
    return frozenset(
        finding.claw
        for finding in foot.findings
        if finding.claw is not Claw.SKIN
        and LESIONS[finding.lesion].group in HURTS_WHEN_LOADED
        and (LESIONS[finding.lesion].alarm or finding.severity >= 2)
    )


def _cow_faults(entry: CowEntry) -> Iterator[Refusal]:
    feet = [foot.foot for foot in entry.feet]
    if len(feet) != len(set(feet)):
        yield Refusal("foot-twice", None, "The same foot is noted twice.", "feet")
    scale, score = entry.mobility_scale, entry.mobility_score
    if (scale is None) != (score is None):
        missing = "mobility_scale" if scale is None else "mobility_score"
        yield Refusal("mobility", None, "A mobility score needs its scale, and a scale its score.", missing)
    elif scale is not None and score not in scale.scores:
        span = f"{scale.scores[0]} to {scale.scores[-1]}"
        yield Refusal("mobility", None, f"{scale.label} runs {span}, not {score}.", "mobility_score")


def _foot_faults(foot: FootEntry) -> Iterator[Refusal]:
    for place, finding in enumerate(foot.findings):
        for fault in _finding_faults(foot.foot, finding):
            yield replace(fault, field=f"findings[{place}].{fault.field}")
    for place, action in enumerate(foot.actions):
        for fault in _action_faults(foot, action):
            yield replace(fault, field=f"actions[{place}].{fault.field}")
    if len({block.claw for block in foot.blocks()}) > 1:
        said = "Both claws of the foot have a block: one must stay off the ground."
        yield Refusal("T8", foot.foot, said, "actions")


def _finding_faults(foot: Foot, finding: FindingEntry) -> Iterator[Refusal]:
    name = finding.lesion.label
    if finding.zone is not None and not is_zone(finding.zone):
        yield Refusal("zone", foot, f"The map has zones 0 to 12, not {finding.zone}.", "zone")
    if not 1 <= finding.severity <= 3:
        yield Refusal("severity", foot, f"How bad runs from 1 to 3, not {finding.severity}.", "severity")
    if finding.dd_stage is not None and finding.lesion is not LesionCode.DD:
        said = f"Only digital dermatitis has a stage M0 to M4.1; {name} has none."
        yield Refusal("stage", foot, said, "dd_stage")
    if LESIONS[finding.lesion].on_skin != (finding.claw is Claw.SKIN):
        place = "the skin" if LESIONS[finding.lesion].on_skin else "the outer or inner claw"
        yield Refusal("place", foot, f"{name.capitalize()} is noted on {place}.", "claw")


def _action_faults(foot: FootEntry, action: ActionEntry) -> Iterator[Refusal]:
    if action.kind is ActionKind.BLOCK:
        yield from _block_faults(foot, action)
    elif action.block_kind is not None:
        yield Refusal("block-kind", foot.foot, "A kind of block belongs to a block put on.", "block_kind")
    if action.kind is ActionKind.NO_CUT and _was_cut(foot, action.claw):
        said = "The claw is both cut and “no cut needed”: take one away."
        yield Refusal("T10", foot.foot, said, "kind")


def _block_faults(foot: FootEntry, action: ActionEntry) -> Iterator[Refusal]:
    if action.block_kind is None:
        said = "Say which block went on: wood, rubber, foam or shoe."
        yield Refusal("block-kind", foot.foot, said, "block_kind")
    if action.claw not in (Claw.LATERAL, Claw.MEDIAL):
        yield Refusal("T8", foot.foot, "A block goes on a claw: say outer or inner.", "claw")
    elif action.claw in sore_claws(foot):
        yield Refusal(
            "T8",
            foot.foot,
            f"The block is on the sore {action.claw.label}. It goes on the sound claw beside it, "
            "so that the sore one carries no weight.",
            "claw",
        )


def _was_cut(foot: FootEntry, claw: Claw | None) -> bool:
    cuts = FUNCTIONAL_STEPS | (CORRECTIVE_STEPS - {ActionKind.BLOCK})
    return any(a.kind in cuts and (claw is None or a.claw is None or a.claw is claw) for a in foot.actions)
