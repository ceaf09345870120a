"""What no plan of a week can undercut, proven."""

from typing import NamedTuple

from visits.domain.planning.board import Board, Week
from visits.domain.planning.exact.prove_week import prove_week
from visits.domain.planning.exact.time_left import ShouldStop, TimeLeft


class Bound(NamedTuple):
    """`value` in the terms of a plan document's cost; `proven_week` where no plan is better than that one."""

    value: float
    proven_week: Week | None
    columns: int
    seconds: float


def lower_bound(board: Board, start: Week, *, seconds: float, should_stop: ShouldStop | None = None) -> Bound:
    """No plan costs less that leaves out as few of the jobs that must be done as the best week known.

    `start` is the best week known. At any time limit the bound is proven; the longer, the closer.
    """
    time = TimeLeft(seconds)
    proof = prove_week(board, start, seconds, should_stop)
    return Bound(proof.bound, proof.week if proof.closed else None, proof.columns, time.gone)
