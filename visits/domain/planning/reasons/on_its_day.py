"""Why a stop lies on its day: due, or nowhere else to go."""

from collections.abc import Iterator
from datetime import timedelta

from visits.domain.planning.board import Board
from visits.domain.planning.measures import instant
from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.standing import Standing, day_of


def due(standing: Standing) -> Iterator[Reason]:
    """Its day is the last before it is late, or it is late already. Nothing where days are in hand."""
    board, stop = standing.board, standing.stop
    job = board.problem.jobs[standing.job]
    if job.due is None:
        return
    if stop.days_late:
        cost = stop.days_late * job.late_cost_per_day
        yield Reason("late", {"due": job.due.isoformat(), "days": stop.days_late, "money": cost})
    elif day_of(board, stop.start) == job.due.isoformat():
        late = (job.due + timedelta(days=1)).isoformat()
        yield Reason(
            "due-day", {"due": job.due.isoformat(), "late_from": late, "money": job.late_cost_per_day}
        )


def only_day(standing: Standing) -> Iterator[Reason]:
    """No other shift, no other day, or none that it fits into as the week stands: the strongest that is true."""
    board, job = standing.board, standing.job
    if board.problem.jobs[job].fixed is not None:
        return
    shift, homes = board.problem.shifts[standing.shift], board.homes[job]
    if len(homes) == 1:
        yield Reason("only-shift", {"shift": shift.id, "shifts": len(board.problem.shifts)})
    elif len(days := {_day(board, home) for home in homes}) == 1:
        yield Reason("only-day", {"day": days.pop()})
    elif standing.elsewhere is None:
        yield Reason("only-fits-here", {"tried": len(homes) - 1})


def _day(board: Board, shift: int) -> str:
    return instant(board.problem.shifts[shift].start, board.problem.zone).date().isoformat()
