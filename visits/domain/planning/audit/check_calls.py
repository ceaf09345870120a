"""Rules 2, 3 and 5 for each stop: crew, window, drive, order of its times, and what was fixed."""

from collections.abc import Iterator

from visits.domain.planning.audit.runs import Call, Run
from visits.domain.planning.audit.tolerance import TENTH, mins, same_time
from visits.domain.planning.audit.week import Week


def check_calls(week: Week, run: Run) -> Iterator[str]:
    """The breaches of rules 2, 3 and 5 in one run."""
    for call in run.calls:
        if not call.job.takes(run.shift.crew):
            yield f"{call.path}.job: may not be done by crew {run.shift.crew}"
        yield from _times(call)
        yield from _window(call)
        yield from _fixed(week, run, call)


def _times(call: Call) -> Iterator[str]:
    spare, lasts = call.arrive - call.free_from, call.finish - call.start
    if spare < call.leg.time - TENTH:
        yield (
            f"{call.path}.arrive: {mins(spare)} after it was free to drive, the drive takes {mins(call.leg.time)}"
        )
    if call.start < call.arrive - TENTH:
        yield f"{call.path}.start: begins {mins(call.arrive - call.start)} before it arrives"
    if not same_time(lasts, call.job.length):
        yield f"{call.path}.finish: the work lasts {mins(lasts)}, the job takes {mins(call.job.length)}"


def _window(call: Call) -> Iterator[str]:
    whole = any(
        window.start - TENTH <= call.start and call.finish <= window.end + TENTH
        for window in call.job.windows
    )
    if not whole:
        yield f"{call.path}.start: the work is not whole inside one window of {call.job.id}"


def _fixed(week: Week, run: Run, call: Call) -> Iterator[str]:
    fixed = call.job.fixed
    if fixed is None:
        return
    if fixed.shift != run.shift.id:
        yield f"{call.path}.job: is fixed on shift {fixed.shift}"
    if not same_time(call.start, fixed.start):
        yield f"{call.path}.start: is fixed at {week.moment(fixed.start).isoformat()}"
