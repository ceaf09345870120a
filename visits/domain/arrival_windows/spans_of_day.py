"""The spans that hold four arrivals in five, and the chance to be done before milking."""

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from visits.domain.arrival_windows.day_ahead import DayAhead, DayStop, Spread, Walked
from visits.domain.arrival_windows.walk_day import walk_day
from visits.domain.visit_lengths.spread_shape import quantile

DRAWS = 1000
HELD = 0.8


@dataclass(frozen=True)
class Likely:
    """Minutes after the zero hour: `HELD` of the draws lie between `low` and `high`, half below `middle`."""

    low: float
    middle: float
    high: float


@dataclass(frozen=True)
class StopSpans:
    """Of one stop; `done_in_time` is the chance to be done by then, None where nobody waits for the cows."""

    arrive: Likely
    begin: Likely
    finish: Likely
    done_in_time: float | None


@dataclass(frozen=True)
class DaySpans:
    """Of each stop in order, and of being home."""

    stops: tuple[StopSpans, ...]
    home: Likely


def spans_of_day(day: DayAhead, spread: Spread, *, seed: int = 1, draws: int = DRAWS) -> DaySpans:
    """Draw the day `draws` times. The same day, seed and number of draws give the same spans."""
    chance = Random(seed)
    walked = [walk_day(day, spread, chance) for _ in range(draws)]
    stops = [_stop_spans(stop, at, walked) for at, stop in enumerate(day.stops)]
    return DaySpans(tuple(stops), _likely([walk.home for walk in walked]))


def _stop_spans(stop: DayStop, at: int, walked: Sequence[Walked]) -> StopSpans:
    return StopSpans(
        _likely([walk.arrive[at] for walk in walked]),
        _likely([walk.begin[at] for walk in walked]),
        _likely([walk.finish[at] for walk in walked]),
        _done_in_time(stop, at, walked),
    )


def _done_in_time(stop: DayStop, at: int, walked: Sequence[Walked]) -> float | None:
    if stop.done_by is None:
        return None
    return sum(walk.finish[at] <= stop.done_by for walk in walked) / len(walked)


def _likely(values: list[float]) -> Likely:
    ordered = sorted(values)
    low, middle, high = (quantile(ordered, share) for share in ((1 - HELD) / 2, 0.5, (1 + HELD) / 2))
    return Likely(low, middle, high)
