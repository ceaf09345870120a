"""What reading a problem rounded, one line each: the planner counts in tenths of a second and metres."""

from collections.abc import Iterator
from datetime import datetime

from visits.domain.planning.check_problem import Reading
from visits.domain.planning.measures import PER_MINUTE, TENTH, whole
from visits.domain.planning.problem_form import JobForm, MatrixForm, ShiftForm

TO_A_TENTH = "rounded to a tenth of a second"


def rounding_notes(reading: Reading) -> Iterator[str]:
    """`path: rounded to ...` for each figure that was finer; the two travel tables have a line each."""
    for place, shift in enumerate(reading.shifts):
        if shift:
            yield from _lines(f"shifts[{place}]", _shift_minutes(shift), _shift_instants(shift))
    if isinstance(reading.travel, MatrixForm):
        if any(whole(value, PER_MINUTE)[1] for row in reading.travel.minutes for value in row):
            yield f"travel.minutes: {TO_A_TENTH}"
        if any(whole(value, 1000)[1] for row in reading.travel.km for value in row):
            yield "travel.km: rounded to a metre"
    for place, job in enumerate(reading.jobs):
        if job:
            yield from _lines(f"jobs[{place}]", {"minutes": job.minutes}, _job_instants(job))


def _lines(path: str, minutes: dict[str, float], instants: dict[str, str]) -> Iterator[str]:
    for key, value in minutes.items():
        if whole(value, PER_MINUTE)[1]:
            yield f"{path}.{key}: {TO_A_TENTH}"
    for key, text in instants.items():
        if datetime.fromisoformat(text).microsecond % TENTH.microseconds:
            yield f"{path}.{key}: {TO_A_TENTH}"


def _shift_minutes(shift: ShiftForm) -> dict[str, float]:
    found = {"max_work_minutes": shift.max_work_minutes or 0.0}
    return found | ({"meal.minutes": shift.meal.minutes} if shift.meal else {})


def _shift_instants(shift: ShiftForm) -> dict[str, str]:
    found = {"start": shift.start, "end": shift.end}
    if shift.meal:
        found |= {"meal.earliest": shift.meal.earliest, "meal.latest": shift.meal.latest}
    return found


def _job_instants(job: JobForm) -> dict[str, str]:
    found: dict[str, str] = {}
    for place, window in enumerate(job.windows):
        found |= {f"windows[{place}].start": window.start, f"windows[{place}].end": window.end}
    return found | ({"fixed.start": job.fixed.start} if job.fixed else {})
