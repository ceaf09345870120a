"""A printed shift laid beside the week: each stop with its job and the drive to it."""

from dataclasses import dataclass

from visits.domain.planning.audit.legs import Leg
from visits.domain.planning.audit.plan import ToldMeal, ToldShift, ToldStop
from visits.domain.planning.audit.week import Job, Shift, Week


@dataclass(frozen=True)
class Call:
    """One stop. `leg`: the drive to it; `free_from`: when the stop before ended, or the base was left."""

    path: str
    job: Job
    leg: Leg
    free_from: int
    arrive: int
    start: int
    finish: int


@dataclass(frozen=True)
class Run:
    """One used shift as it would be driven. `home`: the drive back to base."""

    shift: Shift
    leave: int
    back: int
    calls: tuple[Call, ...]
    home: Leg
    path: str = ""
    meal: ToldMeal | None = None

    @property
    def metres(self) -> int:
        return sum(call.leg.metres for call in self.calls) + self.home.metres

    @property
    def cows(self) -> int:
        return sum(call.job.cows for call in self.calls)

    def busy(self) -> list[tuple[int, int]]:
        """When somebody drives or works. A drive takes the time just before it ends."""
        drives = [(call.arrive - call.leg.time, call.arrive) for call in self.calls]
        work = [(call.start, call.finish) for call in self.calls]
        return [*drives, *work, (self.back - self.home.time, self.back)]


def lay_out(week: Week, told: ToldShift) -> Run | None:
    """The run of a printed shift, or None when its shift or one of its jobs is not in the week, or it has none."""
    shift = week.shifts.get(told.id)
    if shift is None or not told.stops or any(stop.job not in week.jobs for stop in told.stops):
        return None
    place, free_from, calls = shift.base, told.leave, []
    for stop in told.stops:
        job = week.jobs[stop.job]
        calls.append(_call(stop, job, week.leg(place, job.site), free_from))
        place, free_from = job.site, stop.finish
    home = week.leg(place, shift.base)
    return Run(shift, told.leave, told.back, tuple(calls), home, told.path, told.meal)


def _call(stop: ToldStop, job: Job, leg: Leg, free_from: int) -> Call:
    return Call(stop.path, job, leg, free_from, stop.arrive, stop.start, stop.finish)
