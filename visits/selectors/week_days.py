"""The days of a week, and the one that is looked at with its drawings."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime

from visits.selectors.day_drawings import ShiftDrawing, day_map, shift_drawings
from visits.selectors.plan_rows import ShiftView

NO_HOLIDAYS: Mapping[date, str] = {}


@dataclass(frozen=True)
class DayView:
    """One day: its shifts and what they sum to. `home_by` is None where no van goes out; `holiday` is its name if it
    is a public holiday."""

    day: date
    shifts: Sequence[ShiftView]
    holiday: str = ""

    @property
    def farms(self) -> int:
        return len({stop.visit.farm_id for shift in self.shifts for stop in shift.stops})

    @property
    def cows(self) -> int:
        return sum(shift.cows for shift in self.shifts)

    @property
    def home_by(self) -> datetime | None:
        return max((shift.back for shift in self.shifts if shift.back), default=None)


@dataclass(frozen=True)
class ChosenDay:
    """The day looked at: its drawings and its map (SVG); no map where no van goes out."""

    view: DayView
    drawings: Sequence[ShiftDrawing]
    map: str


def days_of(shifts: Sequence[ShiftView], holidays: Mapping[date, str] = NO_HOLIDAYS) -> list[DayView]:
    """The shifts gathered by day, in order."""
    days = sorted({shift.day for shift in shifts})
    return [
        DayView(day, [shift for shift in shifts if shift.day == day], holidays.get(day, "")) for day in days
    ]


def chosen_day(days: Sequence[DayView], wishes: Iterable[date | None]) -> ChosenDay | None:
    """The first wish that is one of the days, else the first day that a van goes out, else the first."""
    by_day = {day.day: day for day in days}
    wished = (by_day[day] for day in wishes if day in by_day)
    going_out = (day for day in days if day.farms)
    view = next(wished, None) or next(going_out, None) or next(iter(days), None)
    if view is None:
        return None
    out = [shift for shift in view.shifts if shift.leave]
    driven = any(shift.stops for shift in out)
    return ChosenDay(view, shift_drawings(view.day, out), day_map(view.day, out) if driven else "")
