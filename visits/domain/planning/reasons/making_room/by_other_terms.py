"""What other terms for the visit itself would make room: other hours, any crew, no promise."""

from collections.abc import Iterator
from dataclasses import replace

from visits.domain.planning.board import Board, Week
from visits.domain.planning.problem import Job, Span
from visits.domain.planning.reasons.making_room.least import places
from visits.domain.planning.reasons.making_room.placed import placed
from visits.domain.planning.reasons.making_room.relaxed import extra_cost, with_job
from visits.domain.planning.reasons.reason import Reason


def terms_that_make_room(board: Board, week: Week, job: int) -> Iterator[Reason]:
    """The cheapest place on each of the other terms, everything else as it stands."""
    asked = board.problem.jobs[job]
    if asked.fixed is not None:
        yield from _on_terms(board, week, job, "no-promise", replace(asked, fixed=None))
        return
    whole_days = tuple(Span(shift.start, shift.end) for shift in board.problem.shifts)
    yield from _on_terms(board, week, job, "other-hours", replace(asked, windows=whole_days))
    if asked.crews is not None:
        yield from _on_terms(board, week, job, "any-crew", replace(asked, crews=None))


def _on_terms(board: Board, week: Week, job: int, code: str, terms: Job) -> Iterator[Reason]:
    problem = with_job(board.problem, job, terms)
    found = [
        (extra, shift, order)
        for shift, order in places(problem, week, job)
        if (extra := extra_cost(board, week, problem, shift, order)) is not None
    ]
    if found:
        extra, shift, order = min(found)
        yield Reason(code, placed(board, problem, shift, order, job) | {"money": round(extra, 2)})
