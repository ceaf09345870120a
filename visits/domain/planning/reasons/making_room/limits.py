"""The limits that could give way, each by whole minutes: what the problem looks like then.

Each takes the problem, the shift, the job and the minutes, and gives the changed problem, or None where that limit is
not there to give way. More minutes never make anything impossible, which is what lets the least be found by halving.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from visits.domain.planning.measures import PER_MINUTE
from visits.domain.planning.problem import Job, Span, WeekProblem
from visits.domain.planning.reasons.making_room.relaxed import with_job, with_shift

Change = Callable[[WeekProblem, int, int, int], WeekProblem | None]
MOST_MINUTES = 240
"""Further than four hours nobody stretches a day."""


@dataclass(frozen=True)
class Limit:
    """One limit: its code and how to let it give way."""

    code: str
    change: Change


def _work_limit(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    day = problem.shifts[shift]
    if day.max_work is None:
        return None
    return with_shift(problem, shift, replace(day, max_work=day.max_work + minutes * PER_MINUTE))


def _shift_end(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    day = problem.shifts[shift]
    return with_shift(problem, shift, replace(day, end=day.end + minutes * PER_MINUTE))


def _shift_start(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    day = problem.shifts[shift]
    return with_shift(problem, shift, replace(day, start=day.start - minutes * PER_MINUTE))


def _longer_day(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    """The end of the shift and the work limit together."""
    later = _shift_end(problem, shift, job, minutes)
    return later and _work_limit(later, shift, job, minutes)


def _meal(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    day = problem.shifts[shift]
    if day.meal is None:
        return None
    shorter = replace(day.meal, length=max(0, day.meal.length - minutes * PER_MINUTE))
    return with_shift(problem, shift, replace(day, meal=shorter))


def _window_end(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    asked = problem.jobs[job]
    windows = tuple(Span(window.start, window.end + minutes * PER_MINUTE) for window in asked.windows)
    return with_job(problem, job, replace(asked, windows=windows)) if windows else None


def _window_start(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    asked = problem.jobs[job]
    windows = tuple(Span(window.start - minutes * PER_MINUTE, window.end) for window in asked.windows)
    return with_job(problem, job, replace(asked, windows=windows)) if windows else None


def _shorter_visit(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    """Down to half at most: less would be another visit."""
    asked = problem.jobs[job]
    shorter = max(asked.length // 2, asked.length - minutes * PER_MINUTE)
    return with_job(problem, job, replace(asked, length=shorter))


def _promise_later(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    asked = problem.jobs[job]
    if asked.fixed is None or asked.fixed.shift != shift:
        return None
    first = asked.fixed.start
    return with_job(problem, job, _within(asked, first, first + minutes * PER_MINUTE))


def _promise_earlier(problem: WeekProblem, shift: int, job: int, minutes: int) -> WeekProblem | None:
    asked = problem.jobs[job]
    if asked.fixed is None or asked.fixed.shift != shift:
        return None
    last = asked.fixed.start
    return with_job(problem, job, _within(asked, last - minutes * PER_MINUTE, last))


def _within(job: Job, first: int, last: int) -> Job:
    """The job without its promise, to start between `first` and `last` inside its windows."""
    end = last + job.length
    spans = [Span(max(w.start, first), min(w.end, end)) for w in job.windows]
    return replace(
        job, fixed=None, windows=tuple(span for span in spans if span.end - span.start >= job.length)
    )


LIMITS = tuple(
    Limit(code, change)
    for code, change in (
        ("window-end", _window_end),
        ("window-start", _window_start),
        ("work-limit", _work_limit),
        ("shift-end", _shift_end),
        ("shift-start", _shift_start),
        ("longer-day", _longer_day),
        ("meal", _meal),
        ("shorter-visit", _shorter_visit),
    )
)
PROMISE_LIMITS = (Limit("promise-later", _promise_later), Limit("promise-earlier", _promise_earlier))
