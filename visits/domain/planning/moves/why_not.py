"""Why a day's order cannot be done: the first rule that stands in the way, with what it lacks.

Every answer is exact: it names a rule that no timing of this order keeps. Looked for in this order: what forbids the
stop there at all, then cows, then hygiene, then hours (going as early as can be), then the end of the shift, the
length of the day and the meal.
"""

from dataclasses import dataclass, replace
from enum import StrEnum
from itertools import pairwise

from visits.domain.planning.board import Board, Order
from visits.domain.planning.retime import best_timing
from visits.domain.planning.route import Route, earliest


class Rule(StrEnum):
    """The rule in the way."""

    BEGUN = "begun"
    LEFT_BEHIND = "left_behind"
    CREW = "crew"
    HELD = "held"
    NO_HOURS = "no_hours"
    COWS = "cows"
    HYGIENE = "hygiene"
    TOO_LATE = "too_late"
    HOME_LATE = "home_late"
    LONG_DAY = "long_day"
    MEAL = "meal"
    MEAL_OR_LONG_DAY = "meal_or_long_day"


@dataclass(frozen=True)
class WhyNot:
    """`job` is the stop whose rule it is (an index; None: the day as a whole), `beside` the stop that clashes with
    it; `over` is by how much: cows, or deciseconds."""

    rule: Rule
    job: int | None = None
    beside: int | None = None
    over: int = 0


def why_not(board: Board, shift: int, order: Order) -> WhyNot | None:
    """What forbids `order` in `shift`; None where it can be done."""
    return (
        _never(board, shift, order)
        or _crowded(board, shift, order)
        or _soiled(board, order)
        or _out_of_time(board.route(shift, order), order)
    )


def _never(board: Board, shift: int, order: Order) -> WhyNot | None:
    """A stop that has no start in this shift whatever else there is."""
    van = board.problem.shifts[shift]
    for at in order:
        job = board.problem.jobs[at]
        if board.openings[shift][at]:
            continue
        if job.crews is not None and van.crew not in job.crews:
            return WhyNot(Rule.CREW, at)
        if job.fixed is not None and job.fixed.shift != shift:
            return WhyNot(Rule.HELD, at)
        return WhyNot(Rule.NO_HOURS, at)
    return None


def _crowded(board: Board, shift: int, order: Order) -> WhyNot | None:
    limit = board.problem.shifts[shift].max_cows
    cows = sum(board.problem.jobs[job].cows for job in order)
    return WhyNot(Rule.COWS, over=cows - limit) if limit is not None and cows > limit else None


def _soiled(board: Board, order: Order) -> WhyNot | None:
    jobs = board.problem.jobs
    for before, after in pairwise(order):
        if jobs[before].hygiene > jobs[after].hygiene:
            return WhyNot(Rule.HYGIENE, after, before)
    return None


def _out_of_time(route: Route, order: Order) -> WhyNot | None:
    free = route.shift.start
    for at, job in enumerate(order):
        option = earliest(route.starts[at], free + route.legs[at])
        if option is None:
            return WhyNot(Rule.TOO_LATE, job, over=free + route.legs[at] - route.starts[at][-1].last)
        free = max(free + route.legs[at], option.first) + route.lengths[at]
    back = free + route.legs[-1]
    if back > route.shift.end:
        return WhyNot(Rule.HOME_LATE, over=back - route.shift.end)
    return None if best_timing(route) is not None else _long_or_hungry(route)


def _long_or_hungry(route: Route) -> WhyNot:
    """The order fits the hours; so it is the meal or the limit of the day that it breaks."""
    limit = route.shift.max_work
    if best_timing(replace(route, shift=replace(route.shift, meal=None))) is not None:
        return WhyNot(Rule.MEAL)
    shortest = best_timing(_by_length_alone(route))
    if limit is None or shortest is None:
        return WhyNot(Rule.MEAL_OR_LONG_DAY)
    return WhyNot(Rule.LONG_DAY, over=shortest.back - shortest.leave - limit)


def _by_length_alone(route: Route) -> Route:
    """The route without a limit on the day, such that the shortest day is its best one."""
    starts = tuple(tuple(option._replace(late=0.0) for option in options) for options in route.starts)
    return replace(route, shift=replace(route.shift, max_work=None, cost_per_hour=1.0), starts=starts)
