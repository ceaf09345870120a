"""The exact best timing of one shift for a given order of jobs.

Least cost (work hours and lateness), then the earliest return, then the latest leaving for that return.
Keeps the openings, the shift, its work limit and the meal gap. Exact over all leaving times and meal places:
see `leave_times` for why the ones tried are enough. Pure Python, whole deciseconds.
"""

from typing import NamedTuple

from visits.domain.planning.leave_times import gone_too_late, home_free, leave_times
from visits.domain.planning.problem import Meal
from visits.domain.planning.route import Route, earliest

BEFORE = -1
"""The meal is behind the crew when it leaves, or is not called for."""


class Walk(NamedTuple):
    """A way through the stops so far: when free again, lateness, and the leg that holds the meal."""

    free: int
    late: float
    meal_leg: int


class Timing(NamedTuple):
    """The best way through a route. `cost` is work hours plus lateness; the rest is deciseconds."""

    cost: float
    back: int
    leave: int
    late: float
    meal_leg: int


def best_timing(route: Route) -> Timing | None:
    """The best timing, or None where the order cannot be done at all."""
    if not _can_be_done(route):
        return None
    best: Timing | None = None
    floor, rate = route.least_late, route.hour_rate
    soonest = _earliest_return(route)
    tries = sorted((max(soonest - leave, route.nonstop), leave) for leave in leave_times(route))
    for least_work, leave in tries:
        if best is not None and _cannot_beat(least_work * rate + floor, leave + least_work, rate, best):
            break
        if best is not None and rate == 0 and best.cost <= floor + 1e-6 and best.back <= soonest:
            break
        found = timing_from(route, leave)
        if found is not None and (best is None or _rank(found) < _rank(best)):
            best = found
    return best


def _cannot_beat(cost: float, back: int, rate: float, best: Timing) -> bool:
    if rate == 0:
        return cost > best.cost
    return cost > best.cost + 1e-6 or (cost > best.cost - 1e-6 and back >= best.back)


def _rank(timing: Timing) -> tuple[float, int, int]:
    return round(timing.cost, 6), timing.back, -timing.leave


def _can_be_done(route: Route) -> bool:
    limit = route.shift.max_work
    if limit is not None and route.nonstop > limit:
        return False
    return all(route.starts) and _earliest_return(route) <= route.shift.end


def _earliest_return(route: Route) -> int:
    """The earliest return without any meal; beyond the shift's end where an opening is missed."""
    free = route.shift.start
    for leg, length, options in zip(route.legs, route.lengths, route.starts, strict=False):
        option = earliest(options, free + leg)
        if option is None:
            return route.shift.end + 1
        free = max(free + leg, option.first) + length
    return free + route.legs[-1]


def timing_from(route: Route, leave: int) -> Timing | None:
    """The best timing that leaves at `leave`, or None."""
    shift, meal = route.shift, route.shift.meal
    fasting = meal is not None and leave < min(gone_too_late(meal), home_free(route, meal))
    fed = [] if fasting else [Walk(leave, 0.0, BEFORE)]
    hungry = Walk(leave, 0.0, BEFORE) if fasting else None
    for at in range(len(route.lengths)):
        if meal is not None and hungry is not None:
            fed += _meal_on_leg(route, at, hungry, meal)
        fed = _unbeaten(
            [walk for each in fed if (walk := _next(route, at, each, each.free + route.legs[at]))]
        )
        hungry = hungry and _next(route, at, hungry, hungry.free + route.legs[at])
        if not fed and hungry is None:
            return None
    ends = [(walk.free + route.legs[-1], walk) for walk in fed]
    if meal is not None and hungry is not None:
        ends += _home_hungry(route, hungry, meal)
    limit = shift.end if shift.max_work is None else min(shift.end, leave + shift.max_work)
    done = [
        Timing((back - leave) * route.hour_rate + walk.late, back, leave, walk.late, walk.meal_leg)
        for back, walk in ends
        if back <= limit
    ]
    return min(done, key=_rank, default=None)


def _next(route: Route, at: int, walk: Walk, ready: int) -> Walk | None:
    option = earliest(route.starts[at], ready)
    if option is None:
        return None
    return Walk(max(ready, option.first) + route.lengths[at], walk.late + option.late, walk.meal_leg)


def _meal_on_leg(route: Route, at: int, walk: Walk, meal: Meal) -> list[Walk]:
    """The meal between two stops, as a walk that is then as good as driving from `free` without it."""
    ends = meal_end(walk.free, route.legs[at], meal, at_first=at == 0)
    return [] if ends is None else [Walk(ends - route.legs[at], walk.late, at)]


def meal_end(free: int, leg: int, meal: Meal, *, at_first: bool) -> int | None:
    """When the crew is ready at the next stop, having eaten: there if still in time, else before driving."""
    begin = max(free + leg, meal.earliest)
    if begin <= meal.latest:
        return begin + meal.length
    begin = max(free, meal.earliest)
    return None if at_first or begin > meal.latest else begin + meal.length + leg


def _home_hungry(route: Route, walk: Walk, meal: Meal) -> list[tuple[int, Walk]]:
    """Ways home for a crew that has not eaten: eat at home, or at the last stop before driving."""
    leg, last = route.legs[-1], len(route.lengths)
    ways = []
    back = walk.free + leg
    if back <= meal.earliest or (
        back <= meal.latest and max(back, meal.earliest) + meal.length <= route.shift.end
    ):
        ways.append((back, Walk(back, walk.late, last + 1)))
    begin = max(walk.free, meal.earliest)
    if begin <= meal.latest:
        ways.append((begin + meal.length + leg, Walk(begin, walk.late, last)))
    return ways


def _unbeaten(walks: list[Walk]) -> list[Walk]:
    """Without those that are neither freer nor less late than another."""
    kept: list[Walk] = []
    for walk in sorted(walks):
        if not kept or walk.late < kept[-1].late:
            kept.append(walk)
    return kept
