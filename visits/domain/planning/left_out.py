"""Why a job is in nobody's day: the truest reason that holds, in one sentence."""

from math import inf

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.insertion import cheapest_spot
from visits.domain.planning.plan import LeftOut
from visits.domain.planning.problem import Job, Shift


def left_out(board: Board, week: Week, job_at: int) -> LeftOut:
    """The reason why `job_at` is not in `week`."""
    reason, detail = _never(board, job_at) or _not_in_this_week(board, week, job_at)
    return LeftOut(board.problem.jobs[job_at].id, reason, detail)


def _never(board: Board, job_at: int) -> tuple[str, str] | None:
    """Reasons that hold whatever else is planned."""
    job = board.problem.jobs[job_at]
    shifts = [shift for shift in board.problem.shifts if job.crews is None or shift.crew in job.crews]
    if not shifts:
        return "no-crew", "None of the crews allowed on this job has a shift."
    if job.fixed is not None and board.cost(job.fixed.shift, (job_at,)) == inf:
        return "fixed-clash", "The promised shift cannot do the job at the promised start."
    rooms = _rooms(job, shifts)
    if not rooms:
        return "no-window-in-any-shift", "None of its windows falls within a shift that may do it."
    if job.length > max(rooms):
        return (
            "too-long-for-any-window",
            "The job takes longer than any of its windows leaves within a shift.",
        )
    return None


def _rooms(job: Job, shifts: list[Shift]) -> list[int]:
    """Lengths of the stretches that a window and a shift have in common."""
    rooms = [
        min(window.end, shift.end) - max(window.start, shift.start)
        for window in job.windows
        for shift in shifts
    ]
    return [room for room in rooms if room > 0 or (room == 0 and job.length == 0)]


def _not_in_this_week(board: Board, week: Week, job_at: int) -> tuple[str, str]:
    job = board.problem.jobs[job_at]
    if job.fixed is not None:
        return "fixed-clash", _beside(_promise_in_the_way(board, job_at))
    spot = cheapest_spot(board, week, job_at)
    if spot is not None and job.leave_out_cost is not None:
        return "not-worth-it", "Doing it would cost more than leaving it out."
    if all(board.cost(shift, (job_at,)) == inf for shift in board.homes[job_at]):
        return "no-room", "Even alone, with the drives, it does not fit into any shift."
    if spot is None and _hygiene_stands_in_the_way(board, week, job_at):
        return "hygiene-clash", "It would fit only after a herd with a worse hygiene level."
    return "no-room", "There is no time left for it beside the other jobs of the week."


def _beside(other: str | None) -> str:
    if other is None:
        return "The promised start cannot be kept beside the other jobs that must be done."
    return f"The promised start cannot be kept together with the one promised to {other}."


def _promise_in_the_way(board: Board, job_at: int) -> str | None:
    """The id of another job promised to the same shift that cannot be done together with this one."""
    jobs, fixed = board.problem.jobs, board.problem.jobs[job_at].fixed
    for other_at, other in enumerate(jobs):
        if fixed and other_at != job_at and other.fixed and other.fixed.shift == fixed.shift:
            pair: tuple[Order, Order] = ((job_at, other_at), (other_at, job_at))
            if min(board.cost(fixed.shift, order) for order in pair) == inf:
                return other.id
    return None


def _hygiene_stands_in_the_way(board: Board, week: Week, job_at: int) -> bool:
    """Whether the job would fit somewhere if every herd had the same hygiene level."""
    return cheapest_spot(board.of_one_level, week, job_at) is not None
