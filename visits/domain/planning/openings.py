"""When a job may start within a shift, and what each such start costs in lateness.

The starts a job's windows allow are cut at local midnight where a late day has a price, so every opening
has one lateness. Openings are in order of time and do not overlap, and lateness never falls along them:
that is what makes "start as early as you can" exact.
"""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import NamedTuple
from zoneinfo import ZoneInfo

from visits.domain.planning.measures import instant, tick
from visits.domain.planning.problem import Job, Shift, Span, WeekProblem


class Opening(NamedTuple):
    """Starts from `first` to `last` (deciseconds) at `late` cost."""

    first: int
    last: int
    late: float


def openings(problem: WeekProblem, shift_at: int, job: Job) -> tuple[Opening, ...]:
    """Openings of `job` in the shift with that index; none where the crew or a promise forbids it."""
    shift = problem.shifts[shift_at]
    if job.crews is not None and shift.crew not in job.crews:
        return ()
    starts = list(starts_within(job, shift))
    if job.fixed is not None:
        if job.fixed.shift != shift_at:
            return ()
        moment = job.fixed.start
        starts = [Span(moment, moment)] if any(s.start <= moment <= s.end for s in starts) else []
    return tuple(_priced(problem.zone, job, starts))


def starts_within(job: Job, shift: Shift) -> list[Span]:
    """Starts that keep the whole job inside one window and inside the shift, merged, in order."""
    spans: list[Span] = []
    for window in sorted(job.windows, key=lambda each: each.start):
        first = max(window.start, shift.start)
        last = min(window.end, shift.end) - job.length
        if first > last:
            continue
        if spans and first <= spans[-1].end + 1:
            spans[-1] = Span(spans[-1].start, max(spans[-1].end, last))
        else:
            spans.append(Span(first, last))
    return spans


def days_late(job: Job, start: int, zone: ZoneInfo) -> int:
    """Whole calendar days in `zone` from the due day to the day of `start`; 0 without a due day."""
    return 0 if job.due is None else max(0, (instant(start, zone).date() - job.due).days)


def _priced(zone: ZoneInfo, job: Job, starts: list[Span]) -> Iterator[Opening]:
    for span in starts:
        first = span.start
        if job.due is not None and job.late_cost_per_day > 0:
            for midnight in _midnights(zone, span):
                yield Opening(first, midnight - 1, days_late(job, first, zone) * job.late_cost_per_day)
                first = midnight
        yield Opening(first, span.end, days_late(job, first, zone) * job.late_cost_per_day)


def _midnights(zone: ZoneInfo, span: Span) -> Iterator[int]:
    day = instant(span.start, zone).date() + timedelta(days=1)
    while (begins := tick(datetime(day.year, day.month, day.day, tzinfo=zone))) <= span.end:
        if begins > span.start:
            yield begins
        day += timedelta(days=1)
