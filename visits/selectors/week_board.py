"""The board of a week: a row for each van and day, its stops laid along the week's common hours.

Places along a row are written as percent of its length, so that a row is as wide as the screen lets it be and its
words keep their size.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from visits.documents.day_ribbon_content import Span
from visits.selectors.plan_rows import HeldView, ShiftView, StopView


@dataclass(frozen=True)
class Bar:
    """A stretch of a row, in percent ("12.5%")."""

    left: str
    wide: str
    right: str


@dataclass(frozen=True)
class BoardStop:
    stop: StopView
    bar: Bar


@dataclass(frozen=True)
class BoardHold:
    held: HeldView
    bar: Bar


@dataclass(frozen=True)
class BoardRow:
    """One van's day as bars. `is_first` of its day: it bears the day's name."""

    shift: ShiftView
    is_first: bool
    stops: Sequence[BoardStop]
    held: Sequence[BoardHold]
    drives: Sequence[Bar]
    meal: Bar | None
    milkings: Sequence[Bar]


@dataclass(frozen=True)
class Board:
    """Rows under a scale of full hours: (percent, "09")."""

    rows: Sequence[BoardRow]
    hours: Sequence[tuple[str, str]]


def board_of_rows(shifts: Sequence[ShiftView], axis: tuple[int, int]) -> Board:
    """The rows of these shifts on an axis from one full hour to another."""
    first, last = axis
    named = {shift.day: shift.id for shift in reversed(shifts)}
    hours = [(_percent(hour * 60, axis), f"{hour:02d}") for hour in range(first, last + 1)]
    return Board([_row(shift, named[shift.day] == shift.id, axis) for shift in shifts], hours)


def _row(shift: ShiftView, is_first: bool, axis: tuple[int, int]) -> BoardRow:
    meal = shift.meal
    is_out = bool(meal and shift.back and shift.leave and meal[0] < shift.back and meal[1] > shift.leave)
    return BoardRow(
        shift,
        is_first,
        [BoardStop(stop, _bar((stop.start, stop.finish), axis)) for stop in shift.stops],
        [BoardHold(held, _bar((held.start, held.finish), axis)) for held in shift.held],
        [_bar((drive.leave, drive.arrive), axis) for drive in shift.drives],
        _bar(meal, axis) if meal and is_out else None,
        [_bar(span, axis) for stop in shift.stops for span in stop.milking if _near(span, stop)],
    )


def _near(milking: Span, stop: StopView) -> bool:
    """A milking is drawn where it borders on the visit: within three hours of it."""
    gap = max(milking[0] - stop.finish, stop.start - milking[1])
    return gap.total_seconds() <= 3 * 3600


def _bar(span: Span, axis: tuple[int, int]) -> Bar:
    first, last = (_share(_minutes(at), axis) for at in span)
    return Bar(_written(first), _written(max(0.0, last - first)), _written(last))


def _minutes(at: datetime) -> float:
    """By the clock on the wall."""
    return at.hour * 60 + at.minute + at.second / 60


def _percent(minutes: float, axis: tuple[int, int]) -> str:
    return _written(_share(minutes, axis))


def _share(minutes: float, axis: tuple[int, int]) -> float:
    first, last = axis[0] * 60, axis[1] * 60
    return min(100.0, max(0.0, 100 * (minutes - first) / (last - first)))


def _written(share: float) -> str:
    return f"{share:.2f}%"
