"""Fixed visits that cannot be kept any more: their van is gone, or cannot be there in time."""

import json
from collections.abc import Collection, Iterator, Mapping
from math import inf

from visits.domain.planning.board import Board
from visits.domain.planning.read_problem import read_problem

Document = Mapping[str, object]
Part = dict[str, object]


def broken_promises(document: Document) -> list[str]:
    """Ids of the jobs whose `fixed` cannot be kept beside the other fixed ones of its shift, the earlier first.

    Of two that clash the one that starts later is broken. Raises ProblemFaults for a malformed problem.
    """
    gone = list(_without_shift(document))
    problem = read_problem(json.dumps(without_promises(document, gone)))
    board = Board(problem)
    broken = [*gone]
    for shift in range(len(problem.shifts)):
        kept: tuple[int, ...] = ()
        promised = [
            (job.fixed.start, at)
            for at, job in enumerate(problem.jobs)
            if job.fixed and job.fixed.shift == shift
        ]
        for _, job in sorted(promised):
            if board.cost(shift, (*kept, job)) < inf:
                kept = (*kept, job)
            else:
                broken.append(problem.jobs[job].id)
    return broken


def without_promises(document: Document, broken: Collection[str]) -> dict[str, object]:
    """The problem in which those jobs are free to go anywhere, but must be planned if any plan can hold them."""
    jobs = [_free(job) if job["id"] in broken else job for job in parts(document, "jobs")]
    return {**document, "jobs": jobs}


def parts(document: Document, key: str) -> list[Part]:
    """The objects of a list of the document; none where there is no such list."""
    value = document.get(key)
    return [part for part in value if isinstance(part, dict)] if isinstance(value, list) else []


def _free(job: Part) -> Part:
    return {key: value for key, value in job.items() if key not in ("fixed", "leave_out_cost")}


def _without_shift(document: Document) -> Iterator[str]:
    shifts = {shift["id"] for shift in parts(document, "shifts")}
    for job in parts(document, "jobs"):
        fixed = job.get("fixed")
        if isinstance(fixed, dict) and fixed.get("shift") not in shifts:
            yield str(job["id"])
