"""Walk through a van's day once, with luck drawn anew: drives, waiting, the meal, lengths.

Method: plain simulation (Monte Carlo). Each length is drawn as mean + standard deviation x error; the error has the
learned shape, and the normal scores behind the errors of one day share a part (a Gaussian copula with one factor).
What happened already is kept: finished visits say how the day runs, by the normal formula for the common part given
k scores (Bayes, normal with normal); a visit under way is drawn again until it is longer than it has lasted.
The meal is had in a wait that is long enough, else where the plan has room for it; without such a plan where the first
stop after its earliest minute is left, a little early where the next visit would last past its latest. Who comes too
late for it eats all the same.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random

from visits.domain.arrival_windows.day_ahead import DayAhead, DayStop, Meal, Spread, Walked

SHORTEST = 5.0
"""Minutes; no visit is shorter."""
TRIES = 60
PATIENCE = 20.0
"""Minutes that somebody waits for the meal rather than begin a visit that lasts past it."""


@dataclass
class _Walk:
    """Where the van is in a drawn day."""

    chance: Random
    spread: Spread
    common: float
    clock: float
    now: float
    meal: Meal | None
    arrive: list[float] = field(default_factory=list)
    begin: list[float] = field(default_factory=list)
    finish: list[float] = field(default_factory=list)


def walk_day(day: DayAhead, spread: Spread, chance: Random) -> Walked:
    """One drawn day from leaving to coming home."""
    now = -math.inf if day.now is None else day.now
    leave = day.leave + max(0.0, chance.gauss(spread.leave_late, spread.leave_spread))
    common = draw_common(day.stops, spread, chance)
    walk = _Walk(chance, spread, common, leave, now, day.meal)
    for stop in day.stops:
        _take(walk, stop)
    _eat_before(walk, 0.0, 0.0, ready=math.inf)
    home = walk.clock + _drive(walk, day.drive_home)
    return Walked(tuple(walk.arrive), tuple(walk.begin), tuple(walk.finish), max(home, now))


def draw_common(stops: Sequence[DayStop], spread: Spread, chance: Random) -> float:
    """The part that all visits of the day have in common (a normal score), given those that are finished."""
    share = spread.day_share
    scores = [
        spread.lengths.score_of((stop.finished - stop.begun - stop.minutes) / stop.spread)
        for stop in stops
        if stop.begun is not None and stop.finished is not None
    ]
    variance = (1 - share) / (1 - share + len(scores) * share)
    mean = variance * math.sqrt(share) / (1 - share) * sum(scores)
    return chance.gauss(mean, math.sqrt(variance))


def _take(walk: _Walk, stop: DayStop) -> None:
    if stop.begun is None:
        _go_there(walk, stop)
    else:
        _forget_meal(walk, stop.begun)
        walk.arrive.append(stop.begun)
        walk.begin.append(stop.begun)
    begun = walk.begin[-1]
    if stop.finished is not None:
        walk.clock = stop.finished
    else:
        # A visit that has not begun cannot have lasted.
        lasted = walk.now - begun if stop.begun is not None else 0.0
        walk.clock = begun + _length(walk, stop, lasted)
    walk.finish.append(walk.clock)


def _go_there(walk: _Walk, stop: DayStop) -> None:
    drive = _drive(walk, stop.drive)
    ready = opening(stop, max(walk.clock + drive, walk.now))
    _eat_before(walk, drive, stop.minutes, ready)
    arrive = max(walk.clock + drive, walk.now)
    walk.arrive.append(arrive)
    walk.begin.append(opening(stop, arrive))


def opening(stop: DayStop, arrive: float) -> float:
    """When work can begin for somebody who is there from `arrive`; at once when every window is over."""
    ready = arrive if stop.not_before is None else max(arrive, stop.not_before)
    return next((max(ready, start) for start, end in stop.windows if end > ready), ready)


def _eat_before(walk: _Walk, drive: float, minutes: float, ready: float) -> None:
    """Have the meal before the next visit where it is time, or where the wait for `ready` is long enough."""
    meal = walk.meal
    if meal is None:
        return
    in_wait = max(walk.clock + drive, meal.earliest)
    if in_wait <= meal.latest and in_wait + meal.minutes <= ready < math.inf:
        walk.meal = None
    elif _is_time(walk, meal, ready + minutes):
        lasts = meal.minutes * math.exp(walk.chance.gauss(0, walk.spread.meal_spread))
        walk.clock = max(walk.clock, meal.earliest) + lasts
        walk.meal = None


def _is_time(walk: _Walk, meal: Meal, next_done: float) -> bool:
    """Whether the meal is had now rather than after the next visit, which is likely done at `next_done`."""
    soon = meal.earliest - walk.clock <= PATIENCE
    if meal.before is not None and len(walk.finish) <= meal.before:
        return soon and len(walk.finish) == meal.before
    return walk.clock >= meal.earliest or (soon and meal.latest < next_done < math.inf)


def _forget_meal(walk: _Walk, begun: float) -> None:
    """A gap before a visit that has begun, long enough and at the right time, was the meal."""
    meal = walk.meal
    if meal is not None and begun - max(walk.clock, meal.earliest) >= meal.minutes:
        walk.meal = None


def _drive(walk: _Walk, minutes: float) -> float:
    error = walk.chance.gauss(0, walk.spread.drive_spread)
    return minutes * walk.spread.drive_ratio * math.exp(error)


def _length(walk: _Walk, stop: DayStop, lasted: float) -> float:
    share = walk.spread.day_share
    for _ in range(TRIES):
        score = math.sqrt(share) * walk.common + math.sqrt(1 - share) * walk.chance.gauss(0, 1)
        drawn = max(SHORTEST, stop.minutes + stop.spread * walk.spread.lengths.error_at(score))
        if drawn > lasted:
            return drawn
    # Longer than ever drawn: nobody knows; a tenth of its length at a time.
    return lasted + walk.chance.expovariate(1 / max(SHORTEST, 0.1 * stop.minutes))
