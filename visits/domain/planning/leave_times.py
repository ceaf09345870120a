"""The only leaving times that can be best for a route.

With a fixed leaving time, starting each job as early as possible is best for the return and for lateness. As
the leaving time grows, the return stays where some job waits for its opening, or grows by the same amount; it
jumps where an opening is missed. So the least cost lies at the shift's start, where a wait has just shrunk to
nothing, or at the last moment for an opening: with or without the meal taken on the way. Those are listed here.
"""

from visits.domain.planning.problem import Meal
from visits.domain.planning.route import Route


def leave_times(route: Route) -> list[int]:
    """Leaving times worth trying, deciseconds; the most promising first."""
    shift, meal = route.shift, route.shift.meal
    pauses = (0,) if meal is None else (0, meal.length)
    found = {shift.start}
    before = 0
    for leg, length, options in zip(route.legs, route.lengths, route.starts, strict=False):
        if meal is not None:
            found |= {meal.earliest - before, meal.earliest - before - leg}
            found |= {meal.latest - before, meal.latest - before - leg}
        before += leg
        found |= {
            edge - before - pause for first, last, _ in options for edge in (first, last) for pause in pauses
        }
        before += length
    if meal is not None:
        found |= {meal.earliest - before, meal.latest - before, meal.latest - before - route.legs[-1]}
        found |= {home_free(route, meal), gone_too_late(meal)}
    return [moment for moment in found if shift.start <= moment <= shift.end]


def gone_too_late(meal: Meal) -> int:
    """The first leaving time from which the shift is not away over any part of the meal time."""
    return max(meal.latest, meal.earliest + 1)


def home_free(route: Route, meal: Meal) -> int:
    """The first leaving time with the whole meal behind it, taken at the base within the shift."""
    return max(meal.earliest, route.shift.start) + meal.length
