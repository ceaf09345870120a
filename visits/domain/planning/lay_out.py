"""A timed route written out: every stop with its instants, and where the meal falls."""

from visits.domain.planning.board import Board, Order
from visits.domain.planning.leave_times import gone_too_late
from visits.domain.planning.openings import days_late
from visits.domain.planning.plan import PlannedShift, Stop
from visits.domain.planning.problem import Meal, Span
from visits.domain.planning.retime import BEFORE, Timing
from visits.domain.planning.route import Route, earliest


def lay_out(board: Board, shift_at: int, order: Order, timing: Timing) -> PlannedShift:
    """The planned shift for `order` by `timing`, which must be that of this route."""
    route = board.route(shift_at, order)
    free, meal, stops = timing.leave, _meal_at_home(route, timing), []
    for at in range(len(order)):
        arrive, ready = free + route.legs[at], free + route.legs[at]
        if timing.meal_leg == at and route.shift.meal is not None:
            arrive, meal = _meal_between(free, route.legs[at], route.shift.meal)
            ready = max(arrive, meal.end)
        option = earliest(route.starts[at], ready)
        if option is None:
            raise AssertionError("a timed route misses an opening")
        start = max(ready, option.first)
        free = start + route.lengths[at]
        stops.append(_stop(board, shift_at, order, at, arrive, start))
    if timing.meal_leg == len(order) and route.shift.meal is not None:
        begin = max(free, route.shift.meal.earliest)
        meal = Span(begin, begin + route.shift.meal.length)
    shift = route.shift
    cows = sum(board.problem.jobs[job].cows for job in order)
    return PlannedShift(
        shift.id, timing.leave, timing.back, board.metres(shift_at, order), cows, meal, tuple(stops)
    )


def _stop(board: Board, shift_at: int, order: Order, at: int, arrive: int, start: int) -> Stop:
    problem = board.problem
    job = problem.jobs[order[at]]
    before = problem.jobs[order[at - 1]].place if at else problem.shifts[shift_at].place
    return Stop(
        job=job.id,
        arrive=arrive,
        start=start,
        finish=start + job.length,
        travel=problem.travel.times[before][job.place],
        metres=problem.travel.metres[before][job.place],
        days_late=days_late(job, start, problem.zone),
    )


def _meal_between(free: int, leg: int, meal: Meal) -> tuple[int, Span]:
    """Arrival and meal: eaten on arrival if that is in time, else before driving."""
    begin = max(free + leg, meal.earliest)
    if begin <= meal.latest:
        return free + leg, Span(begin, begin + meal.length)
    begin = max(free, meal.earliest)
    return begin + meal.length + leg, Span(begin, begin + meal.length)


def _meal_at_home(route: Route, timing: Timing) -> Span | None:
    """The meal taken at the base before or after the round; None where none is called for."""
    meal = route.shift.meal
    if meal is None or timing.leave >= gone_too_late(meal) or timing.back <= meal.earliest:
        return None
    if timing.meal_leg == BEFORE:
        begin = min(meal.latest, timing.leave - meal.length)
        return Span(begin, begin + meal.length)
    if timing.meal_leg == len(route.lengths) + 1:
        return Span(timing.back, timing.back + meal.length)
    return None
