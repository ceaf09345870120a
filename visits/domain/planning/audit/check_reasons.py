"""Rule 7: the reason a job is left out for is true, as far as that can be told exactly."""

from collections.abc import Callable, Iterator

from visits.domain.planning.audit.plan import LeftOut, Plan
from visits.domain.planning.audit.room import rooms_for
from visits.domain.planning.audit.runs import Run
from visits.domain.planning.audit.tolerance import PENNY_PART, TENTH, money
from visits.domain.planning.audit.week import Job, Week

NOT_WORTH_IT = "not-worth-it"


def check_reasons(week: Week, plan: Plan, runs: list[Run]) -> Iterator[str]:
    """The untrue reasons. A job that plainly still fits is in the way of every reason but the price."""
    for entry in plan.left_out:
        job = week.jobs.get(entry.job)
        if job is None:
            continue
        if entry.reason not in REASONS:
            yield f"{entry.path}.reason: {entry.reason} is not a reason of the contract"
            continue
        untrue = REASONS[entry.reason](week, runs, job) or _fits(week, runs, job, entry)
        if untrue:
            yield f"{entry.path}.reason: is not true, {untrue}"


def _fits(week: Week, runs: list[Run], job: Job, entry: LeftOut) -> str:
    rooms = rooms_for(week, runs, job)
    if not rooms:
        return ""
    best = min(rooms, key=lambda room: (room.added, room.start))
    where = f"it fits into {best.shift} at {week.moment(best.start).isoformat()}"
    if entry.reason != NOT_WORTH_IT:
        return f"{where} as the plan stands"
    gain = (job.leave_out_cost or 0) - best.added
    return f"{where} for {money(best.added)}" if gain > PENNY_PART else ""


def _no_crew(week: Week, runs: list[Run], job: Job) -> str:
    allowed = week.shifts_for(job)
    return f"crew {allowed[0].crew} of {allowed[0].id} may do it" if allowed else ""


def _no_window(week: Week, runs: list[Run], job: Job) -> str:
    """Untrue when a window overlaps what a shift has left between the drive out and the drive back."""
    for shift in week.shifts_for(job):
        opens = shift.start + week.leg(shift.base, job.site).time
        closes = shift.end - week.leg(job.site, shift.base).time
        if any(min(w.end, closes) - max(w.start, opens) > TENTH for w in job.windows):
            return f"a window overlaps {shift.id}"
    return ""


def _too_long(week: Week, runs: list[Run], job: Job) -> str:
    """Untrue when a window holds the job within a shift, the drives out and back included."""
    for shift in week.shifts_for(job):
        opens = shift.start + week.leg(shift.base, job.site).time
        closes = shift.end - week.leg(job.site, shift.base).time
        if any(min(w.end, closes) - max(w.start, opens) >= job.length for w in job.windows):
            return f"a window is long enough within {shift.id}"
    return ""


def _fixed_clash(week: Week, runs: list[Run], job: Job) -> str:
    return "" if job.fixed else "the job is not fixed"


def _hygiene_clash(week: Week, runs: list[Run], job: Job) -> str:
    """Untrue when no herd of another hygiene is planned on any shift that could take the job."""
    own = week.hygiene[job.site]
    others = [call for run in runs if job.takes(run.shift.crew) for call in run.calls]
    clash = any(week.hygiene[call.job.site] != own for call in others)
    return "" if clash else "no herd of another hygiene is planned where it could go"


def _not_worth_it(week: Week, runs: list[Run], job: Job) -> str:
    if job.leave_out_cost is None:
        return "the job has no leave-out cost"
    return "a fixed job is done or impossible" if job.fixed else ""


def _no_room(week: Week, runs: list[Run], job: Job) -> str:
    """Untrue when one of the plainer reasons holds: no-room is for everything else."""
    allowed = week.shifts_for(job)
    if not allowed:
        return "no shift has a crew for it"
    if job.fixed:
        return "a fixed job that cannot be kept is a fixed-clash"
    if all(window.end - window.start < job.length - TENTH for window in job.windows):
        return "the job is too long for any window"
    if not any(min(w.end, s.end) >= max(w.start, s.start) - TENTH for w in job.windows for s in allowed):
        return "no window lies in any shift"
    return ""


REASONS: dict[str, Callable[[Week, list[Run], Job], str]] = {
    "no-crew": _no_crew,
    "no-window-in-any-shift": _no_window,
    "too-long-for-any-window": _too_long,
    "fixed-clash": _fixed_clash,
    "hygiene-clash": _hygiene_clash,
    NOT_WORTH_IT: _not_worth_it,
    "no-room": _no_room,
}
