"""Limits in minutes that would each make room by themselves."""

from collections.abc import Iterator

from visits.domain.planning.board import Board, Week
from visits.domain.planning.measures import minutes
from visits.domain.planning.reasons.making_room.least import Found, least
from visits.domain.planning.reasons.making_room.limits import LIMITS, PROMISE_LIMITS
from visits.domain.planning.reasons.making_room.placed import placed
from visits.domain.planning.reasons.reason import Figure, Reason


def minutes_that_make_room(board: Board, week: Week, job: int) -> Iterator[Reason]:
    """The least of each limit; the end of the day and the work limit together only where neither does alone."""
    limits = LIMITS if board.problem.jobs[job].fixed is None else PROMISE_LIMITS
    seen: set[str] = set()
    for limit in limits:
        if limit.code == "longer-day" and seen & {"work-limit", "shift-end"}:
            continue
        found = least(board, week, job, limit)
        if found is not None:
            seen.add(limit.code)
            yield Reason(limit.code, _figures(board, job, found))


def _figures(board: Board, job: int, found: Found) -> dict[str, Figure]:
    figures = placed(board, found.problem, found.shift, found.order, job)
    day = found.problem.shifts[found.shift]
    figures |= {"minutes": found.minutes, "money": round(found.extra, 2)}
    if day.max_work is not None:
        figures["work_limit"] = minutes(day.max_work)
    if day.meal is not None:
        figures["meal_minutes"] = minutes(day.meal.length)
    return figures
