"""The jobs of a week problem, faults noted by path."""

from visits.domain.planning.audit.part import Part
from visits.domain.planning.audit.values import AMOUNT, COUNT, DAY, INSTANT, MINUTES, TEXT
from visits.domain.planning.audit.week import Fixed, Job, Shift, Window


def read_job(part: Part, sites: list[Part], shifts: list[Shift]) -> Job:
    job = Job(
        id=part.need("id", TEXT),
        site=part.need("site", TEXT),
        length=part.need("minutes", MINUTES),
        cows=part.may("cows", COUNT, 0),
        windows=tuple(_window(window) for window in part.parts("windows", "start end")),
        crews=frozenset(part.line("crews", TEXT)) if part.has("crews") else None,
        due=part.may("due", DAY, None),
        late_cost=part.may("late_cost_per_day", AMOUNT, AMOUNT.instead),
        leave_out_cost=part.may("leave_out_cost", AMOUNT, None),
        fixed=_fixed(part, shifts) if part.has("fixed") else None,
    )
    if job.site and job.site not in [site.values.get("id") for site in sites]:
        part.wrong("site", f"there is no site {job.site}")
    return job


def _window(part: Part) -> Window:
    window = Window(part.need("start", INSTANT), part.need("end", INSTANT))
    if window.end < window.start:
        part.wrong("end", "is before its start")
    return window


def _fixed(part: Part, shifts: list[Shift]) -> Fixed:
    fixed = part.part("fixed", "shift start")
    found = Fixed(fixed.need("shift", TEXT), fixed.need("start", INSTANT))
    if found.shift and found.shift not in [shift.id for shift in shifts]:
        fixed.wrong("shift", f"there is no shift {found.shift}")
    return found
