"""Where a left-out job would still fit into a plan, nothing else moved: the plain proof that a reason is untrue."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from visits.domain.planning.audit.check_calls import check_calls
from visits.domain.planning.audit.check_cost import lateness_cost, run_cost
from visits.domain.planning.audit.check_hygiene import check_hygiene
from visits.domain.planning.audit.check_meal import keeps_meal
from visits.domain.planning.audit.check_span import check_span
from visits.domain.planning.audit.runs import Call, Run
from visits.domain.planning.audit.week import Job, Shift, Week


@dataclass(frozen=True)
class Room:
    """A place for a job: on which shift, from when, and what the shift then costs more."""

    shift: str
    start: int
    added: Fraction


def rooms_for(week: Week, runs: list[Run], job: Job) -> list[Room]:
    """Every place found for the job with all other starts kept; none found proves nothing."""
    used = {run.shift.id: run for run in runs}
    found = []
    for shift in week.shifts_for(job):
        before = used.get(shift.id)
        cost = _cost(week, before) if before else Fraction(0)
        for run, start in _trials(week, shift, before, job):
            if _holds(week, run):
                found.append(Room(shift.id, start, _cost(week, run) - cost))
    return found


def _cost(week: Week, run: Run) -> Fraction:
    return run_cost(run) + lateness_cost(week, run)


def _holds(week: Week, run: Run) -> bool:
    breaches = [*check_span(run), *check_calls(week, run), *check_hygiene(week, run)]
    return not breaches and keeps_meal(run)


def _trials(week: Week, shift: Shift, before: Run | None, job: Job) -> Iterator[tuple[Run, int]]:
    kept = [(call.job, call.start) for call in before.calls] if before else []
    for place in range(len(kept) + 1):
        for start in _starts(week, shift, kept, place, job):
            yield _drive(week, shift, before, [*kept[:place], (job, start), *kept[place:]]), start


def _starts(week: Week, shift: Shift, kept: list[tuple[Job, int]], place: int, job: Job) -> Iterator[int]:
    """The first and the last start each window, the drives and the shift leave at that place in the order."""
    first, last = shift.start + week.leg(shift.base, job.site).time, shift.end - job.length
    if place > 0:
        before, start = kept[place - 1]
        first = start + before.length + week.leg(before.site, job.site).time
    if place < len(kept):
        after, start = kept[place]
        last = min(last, start - week.leg(job.site, after.site).time - job.length)
    else:
        last -= week.leg(job.site, shift.base).time
    for window in job.windows:
        bounds = {max(first, window.start), min(last, window.end - job.length)}
        yield from {job.fixed.start} if job.fixed else bounds


def _drive(week: Week, shift: Shift, before: Run | None, order: list[tuple[Job, int]]) -> Run:
    """The run of that order: arriving as each job starts, away no shorter than before."""
    place, free_from, calls = shift.base, 0, []
    for job, start in order:
        leg = week.leg(place, job.site)
        calls.append(Call("", job, leg, free_from or start - leg.time, start, start, start + job.length))
        place, free_from = job.site, start + job.length
    home = week.leg(place, shift.base)
    leave, back = calls[0].free_from, free_from + home.time
    if before:
        leave, back = min(leave, before.leave), max(back, before.back)
    return Run(shift, leave, back, tuple(calls), home)
