"""The figures printed with each shift and stop, recomputed."""

from collections.abc import Iterator

from visits.domain.planning.audit.plan import ToldShift, ToldStop
from visits.domain.planning.audit.runs import Call, Run
from visits.domain.planning.audit.tolerance import kms, mins, same_distance, same_time
from visits.domain.planning.audit.week import Week


def check_figures(week: Week, run: Run, told: ToldShift) -> Iterator[str]:
    """Work minutes, km and cows of the shift; drive, km and days late of each stop."""
    if not same_time(told.work, run.back - run.leave):
        yield f"{told.path}.work_minutes: says {mins(told.work)}, it is {mins(run.back - run.leave)}"
    if not same_distance(told.metres, run.metres):
        yield f"{told.path}.km: says {kms(told.metres)}, the drives add up to {kms(run.metres)}"
    if told.cows != run.cows:
        yield f"{told.path}.cows: says {told.cows}, the jobs add up to {run.cows}"
    for call, stop in zip(run.calls, told.stops, strict=True):
        yield from _stop(week, call, stop)


def _stop(week: Week, call: Call, stop: ToldStop) -> Iterator[str]:
    if not same_time(stop.travel, call.leg.time):
        yield f"{stop.path}.travel_minutes: says {mins(stop.travel)}, the drive takes {mins(call.leg.time)}"
    if not same_distance(stop.metres, call.leg.metres):
        yield f"{stop.path}.km: says {kms(stop.metres)}, the drive is {kms(call.leg.metres)}"
    late = week.days_late(call.job, call.start)
    if stop.days_late != late:
        yield f"{stop.path}.days_late: says {stop.days_late}, it is {late}"
