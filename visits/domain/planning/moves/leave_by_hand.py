"""Leaving visits out by hand: the problem then says that leaving them out costs nothing, which is why they are out."""

from visits.domain.planning.board import Board, Week
from visits.domain.planning.insertion import cheapest_spot
from visits.domain.planning.problem import Job


def left_by_hand(board: Board, week: Week) -> list[Job]:
    """Jobs that `week` leaves out although they fit and are worth it: no reason but a person's own will."""
    planned = {job for order in week for job in order}
    return [
        job for at, job in enumerate(board.problem.jobs) if at not in planned and _worth_it(board, week, at)
    ]


def _worth_it(board: Board, week: Week, at: int) -> bool:
    spot = cheapest_spot(board, week, at)
    out = board.problem.jobs[at].leave_out_cost
    return spot is not None and (out is None or spot.extra < out)


def cost_nothing_out(jobs: list[dict[str, object]], names: set[str]) -> None:
    """Change these jobs of a problem document in place: they may be left out, for nothing."""
    for job in jobs:
        if str(job["id"]) in names:
            job["leave_out_cost"] = 0
