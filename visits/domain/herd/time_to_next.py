"""How long a treated foot goes until it is treated again.

Method: Kaplan-Meier (`survival_curve`) of the days from a treated foot to the next day on which the same foot of
the same cow was treated: when more than a plain trim was done to it, or a lesion was seen on it. At a planned re-check
(a re-check visit, or the look that closed a re-check of that foot) only what was done counts: to see the healing
lesion, or to take the block off, is no treatment, and to dress, cut or block the foot once more is one. Else the days
on which re-checks are booked would make the curve. Every treatment begins a spell of its own. A spell without another
treatment is censored:

- when the cow left the herd, on that day, if the farm told it;
- as lost, on the day she was last seen, when she has not been seen for more than `lost_after_days` up to the last
  day of work: a cow comes to the crush at least once in a lactation, so she has most likely left without a word
  (common practice, no source). Counting her as sound ever after would make feet look better than they are;
- else on the last day of work on the farm: after it nobody was there who could have noted a treatment.

Kaplan-Meier takes those censored to fare like the rest. Cows culled for their feet do not: they leave when the foot is
bad. So the share still free reads too high where cows are culled for lameness; the basis shown with the curve says so.

A spell of no days (treated on the last day of work) tells nothing and is left out. Unit: days; shares 0 to 1.

Source: `survival_curve`. When the figure must not be shown: where visits go to lame cows only, "treated again" is
"fetched again", so say which. Spells of one cow resemble each other, which makes the true interval somewhat wider
than the one shown. Two herds or two years differ in who was treated, not only in how it was done: no ground for
praise or blame.
"""

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from itertools import pairwise

from visits.domain.feet import Foot
from visits.domain.herd.facts import CowLife, HerdFacts
from visits.domain.herd.intervals import LEVEL
from visits.domain.herd.lesion_families import lesions_on_foot
from visits.domain.herd.survival_curve import (
    Followed,
    Median,
    SurvivalCurve,
    SurvivalStep,
    survival_curve,
)
from visits.domain.visit_states import VisitReason

__all__ = [
    "Median",
    "Spell",
    "SpellEnd",
    "SurvivalCurve",
    "SurvivalStep",
    "TimeRule",
    "free_of_treatment_at",
    "spells_of",
    "time_to_next",
]


class SpellEnd(StrEnum):
    """How a spell ended."""

    TREATED_AGAIN = "treated_again"
    LEFT_THE_HERD = "left_the_herd"
    LOST_FROM_SIGHT = "lost_from_sight"
    STILL_FREE = "still_free"

    @property
    def label(self) -> str:
        return self.value.replace("_", " ")


@dataclass(frozen=True)
class TimeRule:
    """`lost_after_days`: a calving interval of about 400 days and half a lactation on top."""

    lost_after_days: int = 540


@dataclass(frozen=True)
class Spell:
    """From one treatment of a foot to the next, or to the day up to which it is known that there was none."""

    cow: int
    foot: Foot
    start: date
    until: date
    end: SpellEnd

    @property
    def days(self) -> int:
        return (self.until - self.start).days


def time_to_next(
    facts: HerdFacts,
    start: date | None = None,
    end: date | None = None,
    rule: TimeRule | None = None,
    level: float = LEVEL,
) -> SurvivalCurve:
    """The curve of the spells that began from `start` on and before `end`; of all spells without them."""
    chosen = [
        spell
        for spell in spells_of(facts, rule)
        if (start is None or start <= spell.start) and (end is None or spell.start < end)
    ]
    return survival_curve((Followed(s.days, s.end is SpellEnd.TREATED_AGAIN) for s in chosen), level)


def free_of_treatment_at(curve: SurvivalCurve, day: float) -> SurvivalStep | None:
    """The share not treated again by then, with its interval; None when nobody was followed so long."""
    return curve.at(day)


def spells_of(facts: HerdFacts, rule: TimeRule | None = None) -> tuple[Spell, ...]:
    """All spells of at least one day, in order of their start, then cow and foot."""
    if not facts.seen:
        return ()
    rule = rule or TimeRule()
    last_seen = {seen.cow: seen.day for seen in facts.seen}
    found: list[Spell] = []
    for (cow, foot), days in _treated_days(facts).items():
        until, end = _censored(facts.by_cow.get(cow), last_seen[cow], facts.seen[-1].day, rule)
        found += _spells(cow, foot, days, until, end)
    return tuple(sorted(found, key=lambda spell: (spell.start, spell.cow, spell.foot)))


def _treated_days(facts: HerdFacts) -> dict[tuple[int, Foot], list[date]]:
    days: dict[tuple[int, Foot], set[date]] = defaultdict(set)
    booked = {(told.cow, told.foot, told.looked_on) for told in facts.rechecks if told.looked_on}
    for seen in facts.seen:
        is_visit_of_rechecks = seen.reason is VisitReason.RECHECK
        for foot in seen.feet:
            is_treated = foot.treated
            if foot.lesions and not (
                is_treated or is_visit_of_rechecks or (seen.cow, foot.foot, seen.day) in booked
            ):
                is_treated = bool(lesions_on_foot(foot))
            if is_treated:
                days[seen.cow, foot.foot].add(seen.day)
    return {key: sorted(found) for key, found in days.items()}


def _censored(
    life: CowLife | None, last_seen: date, last_work: date, rule: TimeRule
) -> tuple[date, SpellEnd]:
    """Up to which day an open spell of hers is known to be free of treatment, and why no further."""
    if life is not None and life.left_on is not None and life.left_on <= last_work:
        return max(life.left_on, last_seen), SpellEnd.LEFT_THE_HERD
    if (last_work - last_seen).days > rule.lost_after_days:
        return last_seen, SpellEnd.LOST_FROM_SIGHT
    return last_work, SpellEnd.STILL_FREE


def _spells(cow: int, foot: Foot, days: list[date], until: date, end: SpellEnd) -> Iterator[Spell]:
    for day, following in pairwise(days):
        yield Spell(cow, foot, day, following, SpellEnd.TREATED_AGAIN)
    if until > days[-1]:
        yield Spell(cow, foot, days[-1], until, end)
