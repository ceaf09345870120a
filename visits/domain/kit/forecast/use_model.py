"""What was learned of the use of a consumable, and what it says of visits to come; `learn_use.py` states the method."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

import numpy as np

from visits.domain.kit.forecast.counts import beta_binomial, sum_of
from visits.domain.kit.forecast.cow_rates import CowRate
from visits.domain.kit.forecast.head_drift import HeadDrift
from visits.domain.kit.forecast.lattice import Cells
from visits.domain.kit.forecast.open_work import OpenWork
from visits.domain.kit.forecast.spread import Floats, Spread, summed
from visits.domain.kit.forecast.visit_use import BookedVisit
from visits.domain.visit_states import VisitReason

VisitKey = tuple[int | None, int, int, VisitReason]


@dataclass(frozen=True)
class CowRates:
    """By what a cow comes for: her routine trim; lame or re-checked; the same on an urgent visit."""

    routine: CowRate
    corrective: CowRate
    urgent: CowRate


@dataclass(frozen=True)
class UseModel:
    """`size` are the cells of what a using cow uses, `per_visit` those of what a visit uses as a whole.

    `visits` is how many visits it was learned from; 0: the first guess alone.
    """

    step: Decimal
    rates: CowRates
    size: Floats
    per_visit: Mapping[VisitReason, Cells]
    heads: HeadDrift
    open_work: OpenWork
    visits: int
    _told: dict[VisitKey, tuple[Floats, Floats]] = field(default_factory=dict, compare=False, repr=False)
    _open: dict[int | None, Floats] = field(default_factory=dict, compare=False, repr=False)

    def of_visit(self, booked: BookedVisit) -> Spread:
        """What the booked visit will use; nothing of it where it may be called off."""
        return Spread.of_cells(self.step, self.visit_cells(booked))

    def of_open_day(self, ahead: int | None = None) -> Spread:
        """What a working day `ahead` days from now will use for work that is not booked yet; None: all its work."""
        return Spread.of_cells(self.step, self.open_cells(ahead))

    def works_on(self, day: date) -> bool:
        """Whether the business works on that weekday."""
        return self.open_work.works_on(day)

    def open_cells(self, ahead: int | None) -> Floats:
        if ahead not in self._open:
            self._open[ahead] = self.open_work.cells(ahead)
        return self._open[ahead]

    def visit_cells(self, booked: BookedVisit) -> Floats:
        return self._both(booked)[0]

    def made_cells(self, booked: BookedVisit) -> Floats:
        """What the visit uses if it is not called off."""
        return self._both(booked)[1]

    def _both(self, booked: BookedVisit) -> tuple[Floats, Floats]:
        farm = booked.farm if self._knows(booked.farm) else None
        key = (farm, booked.heads, booked.corrective, booked.reason)
        if key not in self._told:
            self._told[key] = self._reckoned(key)
        return self._told[key]

    def _knows(self, farm: int) -> bool:
        rates = self.rates
        return any(farm in rate.of_farm for rate in (rates.routine, rates.corrective, rates.urgent))

    def _reckoned(self, key: VisitKey) -> tuple[Floats, Floats]:
        farm, heads, corrective, reason = key
        off, number = self._using_cows(farm, (heads, corrective), reason)
        made = _with_visit_part(sum_of(number, self.size), self.per_visit[reason])
        return _weighed({0: (off, np.ones(1)), 1: (1 - off, made)}), made

    def _using_cows(
        self, farm: int | None, booked: tuple[int, int], reason: VisitReason
    ) -> tuple[float, Floats]:
        """The chance that the visit is called off, and the chances of how many cows use some if it is made."""
        heads, corrective = booked
        come = dict(self.heads.cows(heads))
        off = come.pop(0, 0.0)
        lame = self.rates.urgent if reason is VisitReason.URGENT else self.rates.corrective
        parts = {}
        for cows, chance in come.items():
            sore = cows if corrective >= heads else min(corrective, cows)
            users = summed(_users(self.rates.routine, farm, cows - sore), _users(lame, farm, sore))
            parts[cows] = (chance / (1 - off), users)
        return off, _weighed(parts) if parts else np.ones(1)


def _users(rate: CowRate, farm: int | None, cows: int) -> Floats:
    if cows == 0:
        return np.ones(1)
    curve = rate.curve(farm)
    if curve is None:
        found = np.zeros(cows + 1)
        found[cows if rate.mean > 0.5 else 0] = 1.0
        return found
    return beta_binomial(cows, curve)


def _weighed(parts: Mapping[int, tuple[float, Floats]]) -> Floats:
    """Cells of one of these, each taken with its chance."""
    found = np.zeros(max(len(cells) for _, cells in parts.values()))
    for chance, cells in parts.values():
        found[: len(cells)] += chance * cells
    return found


def _with_visit_part(cows: Floats, part: Cells) -> Floats:
    """Both together. A correction never gives back more than was used."""
    both = summed(cows, part.chances)
    if part.first >= 0:
        return np.concatenate([np.zeros(part.first), both])
    kept = both[-part.first :].copy() if len(both) > -part.first else np.zeros(1)
    kept[0] += both[: -part.first].sum()
    return kept
