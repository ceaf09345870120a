"""Every reason of one plan, as a document to be kept beside it (`trimops-week-reasons/1`)."""

import json
from collections.abc import Iterable, Iterator, Mapping
from time import thread_time

from visits.domain.planning.board import Board, Week
from visits.domain.planning.human_rules import bearings_of
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.reasons.against_rules import against_rules
from visits.domain.planning.reasons.making_room.ways import ways_to_make_room
from visits.domain.planning.reasons.one_moved import with_one_moved
from visits.domain.planning.reasons.plan_mark import plan_mark
from visits.domain.planning.reasons.promise_cost import promise_costs
from visits.domain.planning.reasons.reason import Reason
from visits.domain.planning.reasons.stop_reasons import stop_reasons
from visits.domain.planning.stored_week import week_of_document

ALONE = "only-fits-here"
FORMAT = "trimops-week-reasons/1"
SECONDS = 4.0
"""Of computing: twice what a week of sixty jobs takes, and nobody waits for it."""
JOBS_A_SECOND = 15
"""What a week of more than sixty jobs is given beyond that."""


def week_reasons(text: str, plan: Mapping[str, object], *, seconds: float | None = None) -> dict[str, object]:
    """The reasons of the plan document `plan` for the problem in `text`.

    `stops`, `left_out`: job id -> reasons; `promises`: job id -> what keeping it costs; `rules`: this plan and two
    rules of thumb; `of`: which plan they belong to. What `seconds` of computing (four, or a fifteenth of a
    second a job) were too short for is absent, and `complete` is then false.
    Raises ProblemFaults for a malformed problem.
    """
    problem = read_problem(text)
    board, week = Board(problem), week_of_document(problem, plan)
    clock = Clock(max(SECONDS, len(problem.jobs) / JOBS_A_SECOND) if seconds is None else seconds)
    left_out = clock.within(_left_out(board, week))
    stops = clock.within(stop_reasons(board, week))
    promises = clock.within((job, [reason]) for job, reason in promise_costs(board, week))
    rules = clock.within(
        (0, against_rules(board, week, bearings)) for bearings in [bearings_of(json.loads(text))]
    )
    moved = dict(clock.within(with_one_moved(board, week)))
    names = [job.id for job in problem.jobs]
    return {
        "format": FORMAT,
        "of": plan_mark(plan),
        "complete": not clock.ran_out,
        "stops": {names[job]: _documents(_in_turn(reasons, moved.get(job, []))) for job, reasons in stops},
        "left_out": {names[job]: _documents(reasons) for job, reasons in left_out},
        "promises": {names[job]: _documents(reasons) for job, reasons in promises},
        "rules": [document for _, reasons in rules for document in _documents(reasons)],
    }


class Clock:
    """Lets work go on piece by piece until the seconds are gone; a piece begun is finished."""

    def __init__(self, seconds: float) -> None:
        self.ends = thread_time() + seconds
        self.ran_out = False

    def within(self, pieces: Iterable[tuple[int, list[Reason]]]) -> list[tuple[int, list[Reason]]]:
        """The pieces that could be begun in time."""
        return list(self._timed(iter(pieces)))

    def _timed(self, pieces: Iterator[tuple[int, list[Reason]]]) -> Iterator[tuple[int, list[Reason]]]:
        while True:
            if thread_time() > self.ends:
                self.ran_out = True
                return
            piece = next(pieces, None)
            if piece is None:
                return
            yield piece


def _left_out(board: Board, week: Week) -> Iterator[tuple[int, list[Reason]]]:
    planned = {job for order in week for job in order}
    for job in range(len(board.problem.jobs)):
        if job not in planned:
            yield job, ways_to_make_room(board, week, job)


def _in_turn(reasons: list[Reason], moved: list[Reason]) -> list[Reason]:
    """What one other visit moved would do comes where it is said that nothing else fits."""
    codes = [reason.code for reason in reasons]
    at = codes.index(ALONE) + 1 if ALONE in codes else len(reasons)
    return [*reasons[:at], *moved, *reasons[at:]]


def _documents(reasons: Iterable[Reason]) -> list[dict[str, object]]:
    return [reason.document() for reason in reasons]
