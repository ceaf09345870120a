"""Faultless forms to the solver's own form."""

from datetime import date, datetime
from zoneinfo import ZoneInfo

from visits.domain.planning.check_problem import Reading
from visits.domain.planning.measures import deciseconds, nearest_tick
from visits.domain.planning.problem import Fixed, Job, Meal, Shift, Span, WeekProblem
from visits.domain.planning.problem_form import (
    BaseForm,
    EstimateForm,
    JobForm,
    MatrixForm,
    MealForm,
    ShiftForm,
    SiteForm,
)
from visits.domain.planning.rounding_notes import rounding_notes
from visits.domain.planning.travel import estimate_travel, matrix_travel


def build_problem(reading: Reading, zone: ZoneInfo) -> WeekProblem:
    """`reading` must be free of faults."""
    sites = {site.id: site for site in reading.sites if site}
    places: list[BaseForm | SiteForm] = [*(base for base in reading.bases if base), *sites.values()]
    at = {place.id: number for number, place in enumerate(places)}
    forms = [shift for shift in reading.shifts if shift]
    shifts = {form.id: number for number, form in enumerate(forms)}
    jobs = [job for job in reading.jobs if job]
    table = reading.travel
    if isinstance(table, EstimateForm):
        travel = estimate_travel(table, places)
    elif isinstance(table, MatrixForm):
        travel = matrix_travel(table, [place.id for place in places])
    else:
        raise TypeError("a reading without travel has faults")
    return WeekProblem(
        zone=zone,
        travel=travel,
        shifts=tuple(_shift(form, at[form.base]) for form in forms),
        jobs=tuple(_job(form, at[form.site], sites[form.site].hygiene, shifts) for form in jobs),
        notes=tuple(rounding_notes(reading)),
    )


def _at(text: str) -> int:
    return nearest_tick(datetime.fromisoformat(text))


def _shift(form: ShiftForm, place: int) -> Shift:
    return Shift(
        id=form.id,
        crew=form.crew,
        place=place,
        start=_at(form.start),
        end=_at(form.end),
        max_work=None if form.max_work_minutes is None else deciseconds(form.max_work_minutes),
        max_cows=form.max_cows,
        meal=None if form.meal is None else _meal(form.meal),
        cost_fixed=form.cost_fixed,
        cost_per_hour=form.cost_per_work_hour,
        cost_per_km=form.cost_per_km,
    )


def _meal(form: MealForm) -> Meal | None:
    """None for a meal of no length: any instant of the day is such a gap."""
    length = deciseconds(form.minutes)
    return Meal(length, _at(form.earliest), _at(form.latest)) if length else None


def _job(form: JobForm, place: int, hygiene: int, shifts: dict[str, int]) -> Job:
    return Job(
        id=form.id,
        place=place,
        hygiene=hygiene,
        length=deciseconds(form.minutes),
        cows=form.cows,
        windows=tuple(Span(_at(window.start), _at(window.end)) for window in form.windows),
        crews=None if form.crews is None else frozenset(form.crews),
        due=None if form.due is None else date.fromisoformat(form.due),
        late_cost_per_day=form.late_cost_per_day,
        leave_out_cost=form.leave_out_cost,
        fixed=None if form.fixed is None else Fixed(shifts[form.fixed.shift], _at(form.fixed.start)),
    )
