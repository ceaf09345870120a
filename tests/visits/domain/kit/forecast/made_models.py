"""Use models put together by hand, and visits."""

from datetime import date, timedelta
from decimal import Decimal

import numpy as np

from visits.domain.kit.forecast.cow_rates import CowRate
from visits.domain.kit.forecast.head_drift import HeadDrift
from visits.domain.kit.forecast.lattice import Cells
from visits.domain.kit.forecast.open_work import Calls, OpenWork
from visits.domain.kit.forecast.use_model import CowRates, UseModel
from visits.domain.kit.forecast.visit_use import BookedVisit, VisitUse
from visits.domain.visit_states import VisitReason

MONDAY = date(2026, 11, 30)
ROUTINE, URGENT, RECHECK = VisitReason.ROUTINE, VisitReason.URGENT, VisitReason.RECHECK
AS_BOOKED = HeadDrift(0.0, {0.0: 1.0}, {1.0: 1.0})
NO_PART = dict.fromkeys(VisitReason, Cells(0, np.ones(1)))


def rate(mean, farms=0.0, visits=0.0, **of_farm):
    return CowRate(mean, 0.0, farms, visits, of_farm)


def model(
    routine=0.5, corrective=0.25, urgent=0.75, *, size=(0.0, 1.0), step="1", spread=0.02, **fields
) -> UseModel:
    rates = CowRates(*(rate(mean, spread) for mean in (routine, corrective, urgent)))
    given = {"per_visit": NO_PART, "heads": AS_BOOKED, "open_work": OpenWork(), "visits": 9, **fields}
    return UseModel(Decimal(step), rates, np.array(size), **given)


def calls(*within, ratio=1.0):
    return Calls(tuple(within), ratio)


def always(use, *, weekdays=range(7)):
    """A model in which each working day surely uses so many steps of work that is never booked."""
    cells = np.zeros(use + 1)
    cells[use] = 1.0
    work = OpenWork(frozenset(weekdays), {ROUTINE: Calls((1.0,), 1.0)}, {ROUTINE: cells})
    return model(open_work=_Sure(work.weekdays, work.calls, work.sizes))


class _Sure(OpenWork):
    """One visit a day, for sure."""

    def cells(self, ahead):
        return self.sizes[ROUTINE]


def booked(heads=3, corrective=0, *, days=0, farm=1, reason=ROUTINE, van=None):
    return BookedVisit(farm, MONDAY + timedelta(days=days), van, heads, corrective, reason)


def made(used, *, routine=10, corrective=0, days=-7, farm=1, reason=ROUTINE, **fields):
    """A visit of the past; `used` is a list of what single cows used, or a sum."""
    if isinstance(used, list):
        amounts = [Decimal(str(each)) for each in used]
        fields["sizes"] = tuple((size, amounts.count(size)) for size in sorted(set(amounts)))
        used = sum(amounts, Decimal(0))
    day = MONDAY + timedelta(days=days)
    return VisitUse(farm, day, routine, corrective, Decimal(str(used)), reason, **fields)
