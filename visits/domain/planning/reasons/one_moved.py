"""Where a stop that fits into no other shift could go if one other visit moved for it."""

from collections.abc import Iterator

from visits.domain.planning.board import Board, Week
from visits.domain.planning.openings import days_late
from visits.domain.planning.reasons.making_room.by_others import Swap, cheapest_move, swap_figures
from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.standing import Standing, standings, stop_of


def with_one_moved(board: Board, week: Week) -> Iterator[tuple[int, list[Reason]]]:
    """(job, the cheapest such way) for each stop that is not promised and fits into no other shift by itself."""
    for standing in standings(board, week):
        asked = board.problem.jobs[standing.job]
        stays = (
            asked.fixed is not None or standing.saved == float("-inf") or len(board.homes[standing.job]) < 2
        )
        swap = None if stays or standing.elsewhere is not None else _cheapest(standing)
        if swap is not None:
            yield standing.job, [Reason("one-moved", _figures(standing, swap))]
        else:
            yield standing.job, []


def _cheapest(standing: Standing) -> Swap | None:
    """Into another shift, with the other visit going anywhere it fits then (the stop's old shift too)."""
    rest = tuple(tuple(job for job in order if job != standing.job) for order in standing.week)
    return cheapest_move(standing.board, rest, standing.job, closed=standing.shift)


def _figures(standing: Standing, swap: Swap) -> dict[str, str | int | float | None]:
    board, job = standing.board, standing.job
    figures = swap_figures(board, job, swap)
    order = swap.order if swap.goes is None or swap.goes.shift != swap.shift else swap.goes.order
    start = stop_of(board, swap.shift, order, job).start
    figures["days_late"] = days_late(board.problem.jobs[job], start, board.problem.zone)
    figures["more"] = round(swap.extra - standing.saved, 2)
    return figures
