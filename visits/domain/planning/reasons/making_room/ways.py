"""Everything that would make room for one left-out visit, the easiest first."""

from collections.abc import Callable, Iterator

from visits.domain.planning.board import Board, Week
from visits.domain.planning.insertion import cheapest_spot
from visits.domain.planning.reasons.making_room.by_cows import cows_that_make_room
from visits.domain.planning.reasons.making_room.by_hygiene import hygiene_that_makes_room
from visits.domain.planning.reasons.making_room.by_minutes import minutes_that_make_room
from visits.domain.planning.reasons.making_room.by_other_terms import terms_that_make_room
from visits.domain.planning.reasons.making_room.by_others import others_that_make_room
from visits.domain.planning.reasons.making_room.own_van import van_of_its_own
from visits.domain.planning.reasons.making_room.placed import placed
from visits.domain.planning.reasons.reason import Reason

Finder = Callable[[Board, Week, int], Iterator[Reason]]
FINDERS: tuple[Finder, ...] = (
    others_that_make_room,
    minutes_that_make_room,
    cows_that_make_room,
    hygiene_that_makes_room,
    terms_that_make_room,
)


def ways_to_make_room(board: Board, week: Week, job: int) -> list[Reason]:
    """Each way by itself lets `job` into `week` with everything else in its order.

    A visit that fits but is not worth it has one way, the price it would take; where no single change makes room, or
    its open hours lie in no shift that may do it, a van of its own is told of.
    """
    asked = board.problem.jobs[job]
    spot = cheapest_spot(board, week, job)
    if spot is not None and asked.leave_out_cost is not None:
        figures = placed(board, board.problem, spot.shift, spot.order, job)
        figures |= {
            "money": round(spot.extra, 2),
            "leave_out": asked.leave_out_cost,
            "more": round(spot.extra - asked.leave_out_cost, 2),
        }
        return [Reason("price", figures)]
    if spot is not None:
        return [Reason("fits", placed(board, board.problem, spot.shift, spot.order, job))]
    ways = [reason for find in FINDERS for reason in find(board, week, job)]
    return ways if ways and board.homes[job] else [*ways, van_of_its_own(board, job, len(ways))]
