"""The hours of a day in which cows can be had for trimming: between milkings, within working hours.

Example of the trade (trade-facts 11): milked at 06:30 and 16:30, workable about 09:30 to 15:30. With a
milking of three hours and an hour's rest before the next queue forms, that is what comes out here.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local

PARLOUR_COWS_PER_HOUR = 62  # parlour rate, UK levy board (trade-facts 11)

Window = tuple[datetime, datetime]
"""Start and end, aware UTC instants."""


@dataclass(frozen=True)
class MilkingTime:
    """One milking: when the first cow goes in, by the farm's wall clock, and how long it takes."""

    start: time
    minutes: int


@dataclass(frozen=True)
class WorkingDay:
    """When a trimmer may be on the farm, and how much room milking needs (settings; common practice, no source).

    `rest_after` and `rest_before` are minutes after and before each milking in which no cow is taken; windows shorter
    than `shortest` minutes are dropped. ValueError when the day ends before it starts.
    """

    earliest: time = time(7, 0)
    latest: time = time(18, 0)
    rest_after: int = 0
    rest_before: int = 60
    shortest: int = 30

    def __post_init__(self) -> None:
        if self.latest <= self.earliest:
            raise ValueError("the working day ends before it starts")


@dataclass(frozen=True)
class Neighbours:
    """The milkings of the day before and of the day after: one that runs over midnight takes from the next day."""

    before: Sequence[MilkingTime] = ()
    after: Sequence[MilkingTime] = ()


def milking_minutes(cows_in_milk: int, cows_per_hour: int = PARLOUR_COWS_PER_HOUR) -> int:
    """How long one milking takes when the farm gives no length."""
    return round(cows_in_milk / cows_per_hour * 60)


def working_windows(
    day: date,
    milkings: Sequence[MilkingTime],
    zone: ZoneInfo,
    working_day: WorkingDay,
    neighbours: Neighbours | None = None,
) -> list[Window]:
    """The working windows of `day`, in order.

    A day without milkings (robots, or none that day) is free all the working day. Lengths are true minutes, also on a
    day when the clocks change.
    """
    start, end = (_instant(day, clock, zone) for clock in (working_day.earliest, working_day.latest))
    windows = [(start, end)]
    beside = neighbours or Neighbours()
    for shift, of_day in ((-1, beside.before), (0, milkings), (1, beside.after)):
        for busy in _busy_times(day + timedelta(days=shift), of_day, zone, working_day):
            windows = [piece for window in windows for piece in _without(window, busy)]
    shortest = timedelta(minutes=working_day.shortest)
    return [(start, end) for start, end in windows if end - start >= shortest]


def _instant(day: date, clock: time, zone: ZoneInfo) -> datetime:
    return at_local(day, clock, zone).astimezone(UTC)


def _busy_times(
    day: date, milkings: Sequence[MilkingTime], zone: ZoneInfo, working_day: WorkingDay
) -> Iterator[Window]:
    for milking in milkings:
        start = _instant(day, milking.start, zone)
        end = start + timedelta(minutes=milking.minutes + working_day.rest_after)
        yield start - timedelta(minutes=working_day.rest_before), end


def _without(window: Window, busy: Window) -> list[Window]:
    if busy[1] <= window[0] or busy[0] >= window[1]:
        return [window]
    pieces = [(window[0], busy[0]), (busy[1], window[1])]
    return [piece for piece in pieces if piece[1] > piece[0]]
