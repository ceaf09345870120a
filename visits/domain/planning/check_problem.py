"""Faults between the parts of a problem: ids, references, tables, orders in time."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from visits.domain.planning.problem_form import (
    BaseForm,
    EstimateForm,
    JobForm,
    MatrixForm,
    ShiftForm,
    SiteForm,
)


@dataclass(frozen=True, slots=True)
class Reading:
    """What could be read; None stands for a part that has faults of its own."""

    bases: list[BaseForm | None]
    sites: list[SiteForm | None]
    travel: MatrixForm | EstimateForm | None
    shifts: list[ShiftForm | None]
    jobs: list[JobForm | None]


def faults_between(reading: Reading) -> list[str]:
    """One line per fault, in the order of the document."""
    places = [("bases", part) for part in reading.bases] + [("sites", part) for part in reading.sites]
    faults = [*_ids_given_twice("bases", reading.bases), *_ids_given_twice("sites", reading.sites)]
    bases = {base.id for base in reading.bases if base}
    for place, site in enumerate(reading.sites):
        if site and site.id in bases:
            faults.append(f'sites[{place}].id: "{site.id}" is the id of a base')
    if isinstance(reading.travel, MatrixForm):
        faults += _matrix_faults(reading.travel, [part.id for _, part in places if part])
    faults += _ids_given_twice("shifts", reading.shifts)
    faults += [
        fault
        for place, shift in enumerate(reading.shifts)
        if shift
        for fault in _shift(place, shift, reading)
    ]
    faults += _ids_given_twice("jobs", reading.jobs)
    faults += [fault for place, job in enumerate(reading.jobs) if job for fault in _job(place, job, reading)]
    return faults


def _ids_given_twice(
    key: str, parts: Sequence[BaseForm | SiteForm | ShiftForm | JobForm | None]
) -> Iterator[str]:
    seen: dict[str, int] = {}
    for place, part in enumerate(parts):
        if part is None:
            continue
        if part.id in seen:
            yield f'{key}[{place}].id: "{part.id}" is already the id of {key}[{seen[part.id]}]'
        seen.setdefault(part.id, place)


def _matrix_faults(travel: MatrixForm, wanted: list[str]) -> Iterator[str]:
    seen: set[str] = set()
    for place, name in enumerate(travel.places):
        if name in seen:
            yield f'travel.places[{place}]: "{name}" is given twice'
        seen.add(name)
    for name in wanted:
        if name not in seen:
            yield f'travel.places: "{name}" is missing'
    size = len(travel.places)
    for key, table in (("minutes", travel.minutes), ("km", travel.km)):
        if len(table) != size:
            yield f"travel.{key}: has {len(table)} rows for {size} places"
        for place, row in enumerate(table):
            if len(row) != size:
                yield f"travel.{key}[{place}]: has {len(row)} numbers for {size} places"


def _before(end: str, start: str) -> bool:
    return datetime.fromisoformat(end) < datetime.fromisoformat(start)


def _shift(place: int, shift: ShiftForm, reading: Reading) -> Iterator[str]:
    path = f"shifts[{place}]"
    if not any(base is None or base.id == shift.base for base in reading.bases):
        yield f'{path}.base: "{shift.base}" is no base of this problem'
    if _before(shift.end, shift.start):
        yield f"{path}.end: is before its start"
    if shift.meal and _before(shift.meal.latest, shift.meal.earliest):
        yield f"{path}.meal.latest: is before its earliest"


def _job(place: int, job: JobForm, reading: Reading) -> Iterator[str]:
    path = f"jobs[{place}]"
    if not any(site is None or site.id == job.site for site in reading.sites):
        yield f'{path}.site: "{job.site}" is no site of this problem'
    for number, window in enumerate(job.windows):
        if _before(window.end, window.start):
            yield f"{path}.windows[{number}].end: is before its start"
    shifts = reading.shifts
    if job.fixed and not any(shift is None or shift.id == job.fixed.shift for shift in shifts):
        yield f'{path}.fixed.shift: "{job.fixed.shift}" is no shift of this problem'
