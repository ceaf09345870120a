"""What is named in a plan: every job once, planned or left out; every shift at most once, and used."""

from collections.abc import Iterator

from visits.domain.planning.audit.plan import Plan
from visits.domain.planning.audit.week import Week


def check_lists(week: Week, plan: Plan) -> Iterator[str]:
    """The breaches of "at most once" and of completeness."""
    yield from _shifts(week, plan)
    planned = [(stop.path, stop.job) for shift in plan.shifts for stop in shift.stops]
    left_out = [(entry.path, entry.job) for entry in plan.left_out]
    yield from _jobs(week, planned, "is planned twice")
    yield from _jobs(week, left_out, "is left out twice")
    done = {job for _, job in planned}
    for path, job in left_out:
        if job in done:
            yield f"{path}.job: {job} is both planned and left out"
    for job in sorted(week.jobs.keys() - done - {job for _, job in left_out}):
        yield f"left_out: {job} is neither planned nor left out"


def _shifts(week: Week, plan: Plan) -> Iterator[str]:
    seen: set[str] = set()
    for shift in plan.shifts:
        if shift.id not in week.shifts:
            yield f"{shift.path}.id: there is no shift {shift.id}"
        if shift.id in seen:
            yield f"{shift.path}.id: shift {shift.id} is used twice"
        if not shift.stops:
            yield f"{shift.path}.stops: a used shift has at least one"
        seen.add(shift.id)


def _jobs(week: Week, named: list[tuple[str, str]], twice: str) -> Iterator[str]:
    seen: set[str] = set()
    for path, job in named:
        if job not in week.jobs:
            yield f"{path}.job: there is no job {job}"
        if job in seen:
            yield f"{path}.job: {job} {twice}"
        seen.add(job)
