"""What became of blocks and re-checks: off in time, late, not seen to, or lost from sight.

Method: every block and re-check is put in one drawer by what is known today. The share in time is that of those
whose day is over (before today) and whose cow was still there on it, with Wilson's interval at 95 %. One whose day is
still to come counts on neither side, also when it was seen to already, and so does one whose cow left before the day:
else early successes would count while those still pending would not, and the share would read too high. Unit: blocks,
re-checks; shares 0 to 1. Source: the days come with the block and the re-check (trade-facts 3.5); the drawers are
common practice, no source.

- A block is in time when it was off by `off_due`; "off" is what was noted, also for a foam block that dropped off by
  itself: one that nobody noted stays overdue.
- A re-check is kept in time when the foot was looked at by `due_until`, an early look included. It is missed when the
  day has gone by without a look, or when it was closed without one.

When the figure must not be shown: `in_time` has no interval when nothing came due; with fewer than about ten the
interval says how little it rests on, so show the counts with it.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from typing import TypeVar

from visits.domain.herd.facts import BlockOn, CowLife, HerdFacts, RecheckTold
from visits.domain.herd.intervals import Share, share_of

T = TypeVar("T", bound=StrEnum)


class BlockOutcome(StrEnum):
    """What became of one block."""

    OFF_IN_TIME = "off_in_time"
    OFF_LATE = "off_late"
    OVERDUE = "overdue"
    LEFT_OVERDUE = "left_overdue"
    OFF_BEFORE_DUE = "off_before_due"
    NOT_YET_DUE = "not_yet_due"
    COW_LEFT = "cow_left"

    @property
    def label(self) -> str:
        return _BLOCK_LABELS[self]


class RecheckOutcome(StrEnum):
    """What became of one re-check."""

    KEPT_IN_TIME = "kept_in_time"
    KEPT_LATE = "kept_late"
    MISSED = "missed"
    LOOKED_BEFORE_DUE = "looked_before_due"
    NOT_YET_DUE = "not_yet_due"
    COW_LEFT = "cow_left"

    @property
    def label(self) -> str:
        return _RECHECK_LABELS[self]


# A count stands before each, so they hold for one and for many.
_BLOCK_LABELS = {
    BlockOutcome.OFF_IN_TIME: "off in time",
    BlockOutcome.OFF_LATE: "off late",
    BlockOutcome.OVERDUE: "still on, overdue",
    BlockOutcome.LEFT_OVERDUE: "overdue when the cow left",
    BlockOutcome.OFF_BEFORE_DUE: "off already, not due yet",
    BlockOutcome.NOT_YET_DUE: "on, not due yet",
    BlockOutcome.COW_LEFT: "not due yet when the cow left",
}
_LATE = (BlockOutcome.OFF_LATE, BlockOutcome.OVERDUE, BlockOutcome.LEFT_OVERDUE)
_RECHECK_LABELS = {
    RecheckOutcome.KEPT_IN_TIME: "looked at in time",
    RecheckOutcome.KEPT_LATE: "looked at late",
    RecheckOutcome.MISSED: "not looked at",
    RecheckOutcome.LOOKED_BEFORE_DUE: "looked at already, not due yet",
    RecheckOutcome.NOT_YET_DUE: "not due yet",
    RecheckOutcome.COW_LEFT: "not due yet when the cow left",
}


@dataclass(frozen=True)
class BlockOutcomes:
    """How many blocks ended in each way; `in_time` of those that came due while the cow was there."""

    counts: dict[BlockOutcome, int]
    in_time: Share
    overdue: tuple[BlockOn, ...]


@dataclass(frozen=True)
class RecheckOutcomes:
    """How many re-checks ended in each way; `in_time` and `kept` (late ones too) of those that came due."""

    counts: dict[RecheckOutcome, int]
    in_time: Share
    kept: Share


def block_outcomes(facts: HerdFacts, start: date | None = None, end: date | None = None) -> BlockOutcomes:
    """Blocks due to come off from `start` on and before `end`; all blocks without them."""
    told = [block for block in facts.blocks if _is_within(block.off_due, start, end)]
    ended = [(block, block_outcome(block, facts.by_cow.get(block.cow), facts.today)) for block in told]
    counts = _counted(BlockOutcome, (outcome for _, outcome in ended))
    in_time = counts[BlockOutcome.OFF_IN_TIME]
    due = in_time + sum(counts[late] for late in _LATE)
    overdue = sorted((b for b, o in ended if o is BlockOutcome.OVERDUE), key=lambda b: (b.off_due, b.cow))
    return BlockOutcomes(counts, share_of(in_time, due), tuple(overdue))


def recheck_outcomes(facts: HerdFacts, start: date | None = None, end: date | None = None) -> RecheckOutcomes:
    """Re-checks whose last day is from `start` on and before `end`; all of them without."""
    told = [recheck for recheck in facts.rechecks if _is_within(recheck.due_until, start, end)]
    ended = (recheck_outcome(recheck, facts.by_cow.get(recheck.cow), facts.today) for recheck in told)
    counts = _counted(RecheckOutcome, ended)
    in_time = counts[RecheckOutcome.KEPT_IN_TIME]
    kept = in_time + counts[RecheckOutcome.KEPT_LATE]
    due = kept + counts[RecheckOutcome.MISSED]
    return RecheckOutcomes(counts, share_of(in_time, due), share_of(kept, due))


def block_outcome(block: BlockOn, life: CowLife | None, today: date) -> BlockOutcome:
    if _has_left(life, min(block.off_due, today)):
        return BlockOutcome.COW_LEFT
    if block.off_due >= today:
        return BlockOutcome.NOT_YET_DUE if block.off_on is None else BlockOutcome.OFF_BEFORE_DUE
    if block.off_on is not None:
        return BlockOutcome.OFF_IN_TIME if block.off_on <= block.off_due else BlockOutcome.OFF_LATE
    return BlockOutcome.LEFT_OVERDUE if _has_left(life, today) else BlockOutcome.OVERDUE


def recheck_outcome(recheck: RecheckTold, life: CowLife | None, today: date) -> RecheckOutcome:
    if _has_left(life, min(recheck.due_until, today)):
        return RecheckOutcome.COW_LEFT
    if recheck.due_until >= today:
        is_looked = recheck.looked_on is not None
        return RecheckOutcome.LOOKED_BEFORE_DUE if is_looked else RecheckOutcome.NOT_YET_DUE
    if recheck.looked_on is None:
        return RecheckOutcome.MISSED
    in_time = recheck.looked_on <= recheck.due_until
    return RecheckOutcome.KEPT_IN_TIME if in_time else RecheckOutcome.KEPT_LATE


def _has_left(life: CowLife | None, by: date) -> bool:
    return life is not None and life.left_on is not None and life.left_on <= by


def _is_within(day: date, start: date | None, end: date | None) -> bool:
    return (start is None or start <= day) and (end is None or day < end)


def _counted(kinds: type[T], found: Iterable[T]) -> dict[T, int]:
    counts = Counter(found)
    return {kind: counts[kind] for kind in kinds}
