"""What the visits of the past say of the work itself, whatever it used: the same for every consumable."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from statistics import median_high

import numpy as np

from visits.domain.kit.forecast.head_drift import HeadDrift, Heads, learn_heads
from visits.domain.kit.forecast.open_work import Calls, learn_calls, working_weekdays
from visits.domain.kit.forecast.put_off import put_off_as_made
from visits.domain.kit.forecast.spread import Flags, Floats, Wholes
from visits.domain.kit.forecast.visit_use import VisitUse
from visits.domain.visit_states import VisitReason

HALF_LIFE = 365.0
"""Days after which a visit counts half (no source; tests/bench/visits/bench_kit_forecast.py measures what it gives)."""


@dataclass(frozen=True)
class Usual:
    """Cows of a usual visit for one reason, and how many of them are lame or re-checked."""

    heads: int
    corrective: int


@dataclass(frozen=True)
class PastWork:
    """Visit by visit, in the order they were told: farm, cows of either kind, whether urgent, how much it counts.

    `weekdays`, `calls`, `usual`, `heads`: what they say together.
    """

    farm: Wholes
    routine: Floats
    lame: Floats
    is_urgent: Flags
    weight: Floats
    heads: HeadDrift
    weekdays: frozenset[int]
    calls: Mapping[VisitReason, Calls]
    usual: Mapping[VisitReason, Usual]

    def of_last(self, number: int) -> "PastWork":
        """The cows of the last so many visits; what all visits say together stays."""
        first = len(self.farm) - number
        if first < 0:
            raise ValueError("there were not so many visits")
        return replace(
            self,
            farm=self.farm[first:],
            routine=self.routine[first:],
            lame=self.lame[first:],
            is_urgent=self.is_urgent[first:],
            weight=self.weight[first:],
        )


def past_work(past: Sequence[VisitUse]) -> PastWork:
    """Of visits told with the use of any one consumable."""
    weights = _weights([visit.day for visit in past])
    settled = put_off_as_made(past)
    made = [visit for visit in settled if visit.is_made]
    weekdays = working_weekdays(visit.day for visit in made)
    weigh = _working_days(made, weekdays)
    by_reason = {reason: [visit for visit in made if visit.reason is reason] for reason in VisitReason}
    return PastWork(
        farm=np.array([visit.farm for visit in past], dtype=np.int64),
        routine=np.array([visit.routine for visit in past], dtype=float),
        lame=np.array([visit.corrective for visit in past], dtype=float),
        is_urgent=np.array([visit.reason is VisitReason.URGENT for visit in past], dtype=bool),
        weight=np.array(weights, dtype=float),
        heads=learn_heads(_heads(settled)),
        weekdays=weekdays,
        calls={reason: learn_calls(own, weigh) for reason, own in by_reason.items() if own},
        usual={reason: _usual(own) for reason, own in by_reason.items() if own},
    )


def _heads(settled: Sequence[VisitUse]) -> list[Heads]:
    """A visit of which no cow was noted says nothing of how many came."""
    weights = _weights([visit.day for visit in settled])
    return [
        Heads(visit.booked[0], visit.cows if visit.is_made else None, weight)
        for visit, weight in zip(settled, weights, strict=True)
        if visit.booked is not None and (visit.cows or not visit.is_made)
    ]


def _weights(days: Sequence[date]) -> list[float]:
    """1 for the newest day, half of it `HALF_LIFE` days before."""
    newest = max(days, default=None)
    return [0.5 ** ((newest - day).days / HALF_LIFE) for day in days] if newest else []


def _working_days(made: Sequence[VisitUse], weekdays: frozenset[int]) -> dict[date, float]:
    """Every working day from the first visit to the last, and how much it counts."""
    if not made:
        return {}
    seen = {visit.day for visit in made}
    first, last = min(seen), max(seen)
    days = [first + timedelta(days=number) for number in range((last - first).days + 1)]
    worked = [day for day in days if day.weekday() in weekdays]
    return dict(zip(worked, _weights([*worked, last]), strict=False))


def _usual(own: Sequence[VisitUse]) -> Usual:
    return Usual(median_high(visit.cows for visit in own), median_high(visit.corrective for visit in own))
