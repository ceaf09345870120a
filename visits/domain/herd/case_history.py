"""Cases of lesions: sightings of one lesion on one foot of one cow, gathered into new, repeated and chronic cases.

Method: a lesion is taken by its parent (a white line abscess goes on from a white line lesion). A case begins on
the day the lesion is first seen on the foot. It goes on while it is seen again within the gap of `CaseRule`, which is
long for lesions that last by nature (digital dermatitis); it is over when the foot is lifted and the lesion is not
there, or when the gap goes by. A later sighting begins another case. Then:

- chronic: seen on `chronic_sightings` days or more, the last more than `again_days` after the first;
- repeated: seen again more than `again_days` after the first, or begun within `repeat_days` of the last sighting
  of an earlier case of the same lesion on the same foot;
- new: everything else.

Unit: cases. Every case counts once, on its first day, whatever became of it: `new_cases_between` is the numerator of
rates per cow-year. A kind is what is known so far: a new case may become a chronic one. Source: the days stand in
`case_rule` with where they come from; the kinds in these words are ours.

When the figure must not be shown: a foot that is lifted for the first time shows old and new lesions alike
(`is_first_look`). Rates of a farm's first year therefore read too high; leave first looks out or say so.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from operator import itemgetter

from visits.domain.feet import Foot
from visits.domain.herd.case_rule import CaseRule
from visits.domain.herd.facts import HerdFacts
from visits.domain.herd.lesion_families import lesions_on_foot
from visits.domain.lesion_names import family_of
from visits.domain.lesions import LesionCode

__all__ = ["Case", "CaseKind", "CaseRule", "cases_of", "new_cases_between"]


class CaseKind(StrEnum):
    """What became of a case, as far as it is known."""

    NEW = "new"
    REPEATED = "repeated"
    CHRONIC = "chronic"

    @property
    def label(self) -> str:
        return self.value.capitalize()


@dataclass(frozen=True)
class Case:
    """One lesion on one foot from its first sighting to its last. `presentations` are the days it was seen, in order.

    `is_first_look` is true when the foot had not been lifted before: how long it had been there is not known.
    """

    cow: int
    foot: Foot
    lesion: LesionCode
    first: date
    presentations: tuple[date, ...]
    kind: CaseKind
    is_first_look: bool = False

    @property
    def last(self) -> date:
        return self.presentations[-1]


Look = tuple[date, frozenset[LesionCode]]
"""A day on which a foot was lifted, with what was seen on it."""

_CLEAR: frozenset[LesionCode] = frozenset()


def cases_of(facts: HerdFacts, rule: CaseRule | None = None) -> tuple[Case, ...]:
    """All cases of the herd, in order of their first day, then cow, foot and lesion."""
    rule = rule or CaseRule()
    found: list[Case] = []
    for (cow, foot), looks in _looks_by_foot(facts).items():
        for lesion in sorted({lesion for _, lesions in looks for lesion in lesions}):
            found += _cases_on(cow, foot, lesion, looks, rule)
    return tuple(sorted(found, key=lambda case: (case.first, case.cow, case.foot, case.lesion)))


def new_cases_between(
    cases: Iterable[Case], start: date, end: date, *, with_first_looks: bool = True
) -> tuple[Case, ...]:
    """Cases that began from `start` on and before `end`."""
    return tuple(
        case for case in cases if start <= case.first < end and (with_first_looks or not case.is_first_look)
    )


def _looks_by_foot(facts: HerdFacts) -> dict[tuple[int, Foot], list[Look]]:
    """The looks at each foot that ever had a lesion, in order of days; two looks on one day are one."""
    sore = {(seen.cow, foot.foot) for seen in facts.seen for foot in seen.feet if foot.lesions}
    days: dict[tuple[int, Foot], dict[date, frozenset[LesionCode]]] = defaultdict(dict)
    for seen in facts.seen:
        for foot in seen.feet:
            key = (seen.cow, foot.foot)
            if key in sore:
                codes = (
                    frozenset(family_of(s.lesion) for s in lesions_on_foot(foot)) if foot.lesions else _CLEAR
                )
                days[key][seen.day] = codes | days[key].get(seen.day, _CLEAR)
    return {key: sorted(by_day.items(), key=itemgetter(0)) for key, by_day in days.items()}


def _cases_on(cow: int, foot: Foot, lesion: LesionCode, looks: list[Look], rule: CaseRule) -> Iterator[Case]:
    before: date | None = None
    for days in _sightings(lesion, looks, rule.gap_of(lesion)):
        kind = _kind(days, before, rule)
        yield Case(cow, foot, lesion, days[0], tuple(days), kind, days[0] == looks[0][0])
        before = days[-1]


def _sightings(lesion: LesionCode, looks: list[Look], gap: int) -> list[list[date]]:
    """The days of each case in turn."""
    cases: list[list[date]] = []
    goes_on = False
    for day, lesions in looks:
        if lesion not in lesions:
            goes_on = False
        elif goes_on and (day - cases[-1][-1]).days <= gap:
            cases[-1].append(day)
        else:
            cases.append([day])
            goes_on = True
    return cases


def _kind(days: list[date], before: date | None, rule: CaseRule) -> CaseKind:
    lasted = (days[-1] - days[0]).days > rule.again_days
    if lasted and len(days) >= rule.chronic_sightings:
        return CaseKind.CHRONIC
    came_back = before is not None and (days[0] - before).days <= rule.repeat_days
    return CaseKind.REPEATED if lasted or came_back else CaseKind.NEW
