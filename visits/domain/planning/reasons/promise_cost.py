"""What each promise costs: the week as it is against the same week with that one promise loosened to its open hours.

The loosened week is found by exact insertion: the visit goes to its cheapest place, then each other visit of the two
days touched is taken out and put back at its cheapest place once, then what was left out is tried again. The week with
the promise kept gets the same treatment first, so that nothing is laid at the promise's door that is not its own.
The loosened week exists and keeps every rule, so the figure is a lower one: it costs at least that.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.insertion import cheapest_spot, insert_all
from visits.domain.planning.reasons.making_room.relaxed import with_job
from visits.domain.planning.reasons.reason import Figure, Reason
from visits.domain.planning.reasons.standing import PENNY_PART, moment_of, stop_of


@dataclass(frozen=True)
class Loosened:
    """`kept` and `free`: the two weeks; `board` is the one without the promise."""

    board: Board
    kept: Week
    free: Week


def promise_costs(board: Board, week: Week) -> Iterator[tuple[int, Reason]]:
    """(job, what its promise costs) for each promise kept that could be kept at another time at all."""
    for shift, order in enumerate(week):
        for job in order:
            if board.problem.jobs[job].fixed is not None:
                loosened = loosen(board, week, job, shift)
                if _could_move(loosened.board, job):
                    yield job, Reason("promise", _figures(board, loosened, job))


def loosen(board: Board, week: Week, job: int, shift: int) -> Loosened:
    """Both weeks, each with the same second look at the days touched."""
    asked = board.problem.jobs[job]
    problem = with_job(board.problem, job, replace(asked, fixed=None, leave_out_cost=None))
    known = {key: cost for key, cost in board.known.items() if job not in key[1]}
    free = Board(problem, known=known, surcharge=board.surcharge)
    kept = _second_look(board, week, week[shift])
    rest = tuple(tuple(each for each in order if each != job) for order in kept)
    spot = cheapest_spot(free, rest, job)
    if spot is None:
        return Loosened(free, kept, kept)
    moved = (*rest[: spot.shift], spot.order, *rest[spot.shift + 1 :])
    looked = _second_look(free, moved, (*kept[shift], *spot.order))
    return Loosened(free, kept, min(kept, looked, key=lambda each: _price(free, each)))


def _price(board: Board, week: Week) -> tuple[int, float]:
    """Visits left out that had to be done, then the cost of the contract to the penny."""
    planned = {job for order in week for job in order}
    out = [job for at, job in enumerate(board.problem.jobs) if at not in planned]
    missing = sum(job.leave_out_cost is None or job.fixed is not None for job in out)
    cost = sum(board.cost(shift, order) for shift, order in enumerate(week))
    return missing, round(cost + sum(job.leave_out_cost or 0.0 for job in out), 2)


def _second_look(board: Board, week: Week, jobs: Iterable[int]) -> Week:
    """Each of these jobs taken out and put back once where it costs least; then what is left out is tried."""
    orders: list[Order] = list(week)
    for job in dict.fromkeys(jobs):
        if board.problem.jobs[job].fixed is not None:
            continue
        rest = [tuple(each for each in order if each != job) for order in orders]
        spot = cheapest_spot(board, rest, job)
        if spot is None:
            continue
        rest[spot.shift] = spot.order
        if board.total(tuple(rest)) < board.total(tuple(orders)) - PENNY_PART:
            orders = rest
    out = [job for job in range(len(board.problem.jobs)) if all(job not in order for order in orders)]
    return tuple(insert_all(board, orders, sorted(out, key=lambda each: -board.out_cost(each))))


def _could_move(free: Board, job: int) -> bool:
    """Whether its open hours leave any other start at all."""
    starts = [each for home in free.homes[job] for each in free.openings[home][job]]
    return len(starts) > 1 or any(each.last > each.first for each in starts)


def _figures(board: Board, loosened: Loosened, job: int) -> dict[str, Figure]:
    free, fixed = loosened.board, board.problem.jobs[job].fixed
    shift, order = next((at, each) for at, each in enumerate(loosened.free) if job in each)
    figures: dict[str, Figure] = {
        "promised": moment_of(board, fixed.start) if fixed else None,
        "money": round(_price(board, loosened.kept)[1] - _price(free, loosened.free)[1], 2),
        "shift": board.problem.shifts[shift].id,
        "start": moment_of(board, stop_of(free, shift, order, job).start),
    }
    before = {each for kept in loosened.kept for each in kept}
    more = [each for new in loosened.free for each in new if each not in before]
    return figures | {"room_for": board.problem.jobs[more[0]].id if more else None}
