"""What the days ahead will use: booked visits, and on working days the work that nobody has booked yet."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal
from functools import cached_property

import numpy as np

from visits.domain.kit.forecast.counts import times
from visits.domain.kit.forecast.spread import Floats, Spread, summed
from visits.domain.kit.forecast.use_model import UseModel
from visits.domain.kit.forecast.visit_use import BookedVisit


@dataclass(frozen=True)
class UseAhead:
    """`by_day[n]` are the cells of the use of the n-th day from `today`, in steps of the model."""

    model: UseModel
    today: date
    by_day: tuple[Floats, ...]

    @property
    def step(self) -> Decimal:
        return self.model.step

    @cached_property
    def so_far(self) -> tuple[Floats, ...]:
        """The use from today to the end of each day."""
        found, cells = [], np.ones(1)
        for day in self.by_day:
            cells = summed(cells, day)
            found.append(cells)
        return tuple(found)

    def until(self, day: date) -> Spread:
        """The use from today to the end of `day`, which may lie beyond the days told; none before today."""
        number = (day - self.today).days
        if number < 0:
            return Spread.nothing(self.step)
        told = self.so_far[min(number, len(self.so_far) - 1)]
        worked = self._working_days(len(self.by_day), number)
        return Spread.of_cells(self.step, summed(told, times(self.model.open_cells(None), worked)))

    def _working_days(self, first: int, last: int) -> int:
        """How many of the days from the first to the last, counted from today, the business works on."""
        weeks, rest = divmod(max(0, last - first + 1), 7)
        begin = self.today + timedelta(days=first)
        over = sum(self.model.works_on(begin + timedelta(days=number)) for number in range(rest))
        return weeks * len(self.model.open_work.weekdays) + over

    def of_day(self, number: int) -> Floats:
        """The use of the n-th day from today; nothing is booked beyond the days told."""
        if number < len(self.by_day):
            return self.by_day[number]
        day = self.today + timedelta(days=number)
        return self.model.open_cells(None) if self.model.works_on(day) else np.ones(1)


def use_ahead(model: UseModel, booked: Sequence[BookedVisit], today: date, last: date) -> UseAhead:
    """From `today` to `last`. Visits before today are left out; ValueError for a last day before today."""
    if last < today:
        raise ValueError("the days ahead end before they begin")
    by_day: defaultdict[date, list[BookedVisit]] = defaultdict(list)
    for visit in booked:
        by_day[visit.day].append(visit)
    cells = []
    for number in range((last - today).days + 1):
        day = today + timedelta(days=number)
        found = model.open_cells(number) if model.works_on(day) else np.ones(1)
        for visit in by_day[day]:
            found = summed(found, model.visit_cells(visit))
        cells.append(found)
    return UseAhead(model, today, tuple(cells))
