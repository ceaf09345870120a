"""The points a routing engine may call at: a job in each of its patterns of starts, and the places for a meal.

The clock of a shift starts at local midnight of the day it starts, so that a window that comes back every day is
one point and not seven. A shift with a meal gets one group of points, exactly one of which is called at: BEFORE
(the meal is behind the crew when it leaves, or the shift is not used), AFTER (eaten at home), or a meal at one
of the places on the way.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from visits.domain.planning.board import Board
from visits.domain.planning.leave_times import home_free
from visits.domain.planning.measures import instant, tick
from visits.domain.planning.problem import Meal, Shift

VISIT, BEFORE, AFTER, MEAL = "visit", "before", "after", "meal"
NO_LATEST = 10**8


@dataclass(frozen=True, slots=True)
class Node:
    """`first` and `last` start on the shift clock; `late` gives the shifts it is open in and their lateness."""

    kind: str
    place: int
    level: int
    first: int
    last: int
    length: int
    late: tuple[tuple[int, float], ...]
    job: int | None = None


def shift_zero(board: Board, shift: Shift) -> int:
    """Local midnight before the shift's start, deciseconds."""
    day = instant(shift.start, board.problem.zone).date()
    return tick(datetime(day.year, day.month, day.day, tzinfo=board.problem.zone))


def visit_nodes(board: Board) -> list[Node]:
    """One node per job and distinct pattern of starts."""
    zeros = [shift_zero(board, shift) for shift in board.problem.shifts]
    nodes = []
    for at, job in enumerate(board.problem.jobs):
        patterns: dict[tuple[int, int], list[tuple[int, float]]] = {}
        for shift in board.homes[at]:
            for option in board.openings[shift][at]:
                key = option.first - zeros[shift], option.last - zeros[shift]
                patterns.setdefault(key, []).append((shift, option.late))
        nodes += [
            Node(VISIT, job.place, job.hygiene, first, last, job.length, tuple(late), at)
            for (first, last), late in sorted(patterns.items())
        ]
    return nodes


def meal_nodes(board: Board, shift_at: int, visits: list[Node]) -> Iterator[Node]:
    """The meal points of one shift; none where it has no meal."""
    shift = board.problem.shifts[shift_at]
    meal = shift.meal
    if meal is None:
        return
    zero, open_here = shift_zero(board, shift), ((shift_at, 0.0),)
    route = board.route(shift_at, ())
    yield Node(BEFORE, shift.place, 0, home_free(route, meal) - zero, NO_LATEST, 0, open_here)
    yield Node(AFTER, shift.place, 0, 0, max(0, _home_by(shift, meal) - zero), 0, open_here)
    places = {(node.place, node.level) for node in visits if any(at == shift_at for at, _ in node.late)}
    for place, level in sorted(places):
        yield Node(
            MEAL,
            place,
            level,
            max(0, meal.earliest - zero),
            max(0, meal.latest - zero),
            meal.length,
            open_here,
        )


def _home_by(shift: Shift, meal: Meal) -> int:
    """The latest return after which the meal can still be eaten at home, or is not called for."""
    return max(meal.earliest, min(meal.latest, shift.end - meal.length))
