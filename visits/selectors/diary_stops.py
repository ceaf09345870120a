"""What stands in the diary of a week, held hours included, and what each of it is to the planner."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from visits.domain.visit_states import VisitState
from visits.models import HeldHour, Visit
from visits.selectors.held_hours import shift_of_hold

Part = Mapping[str, object]


@dataclass(frozen=True)
class DiaryStop:
    """A visit with an hour, or an hour held for a farm (then `visit` is None). `shift` and `job` are ids of the week
    problem. `moves_for`: the held hour for which the visit counts as standing here already. `stays`: it is kept like a
    promised one."""

    job: str
    shift: str
    start: datetime
    minutes: int
    cows: int
    site: str
    name: str
    visit: Visit | None = None
    moves_for: HeldHour | None = None
    stays: bool = False

    @property
    def is_told(self) -> bool:
        return self.visit is not None and self.visit.hour_told is not None

    @property
    def is_confirmed(self) -> bool:
        return self.visit is not None and self.visit.visit_state is VisitState.CONFIRMED

    @property
    def is_promised(self) -> bool:
        """Stays where it is, whatever is asked for."""
        return self.visit is None or self.moves_for is not None or self.is_confirmed or self.stays


def diary_stops(
    scope: Scope, monday: date, zone: ZoneInfo, now: datetime, ignore: HeldHour | None = None
) -> list[DiaryStop]:
    """Planned and confirmed visits and held hours of the week, but for `ignore` and its move. Two queries."""
    first, last = (at_local(monday + timedelta(days=days), time(0), zone) for days in (0, 7))
    holds = HeldHour.objects.within(scope).in_force(now).select_related("farm")
    kept = [held for held in holds if ignore is None or held.pk != ignore.pk]
    rows = Visit.objects.within(scope).in_state(VisitState.PLANNED, VisitState.CONFIRMED)
    rows = rows.starting_between(first, last).select_related("farm", "van").filter(van__isnull=False)
    moved = {held.moved_visit_id: held for held in kept}
    stops = [_held_stop(held, zone) for held in kept]
    for visit in rows.order_by("id"):
        held = moved.get(visit.pk) if visit.visit_state is VisitState.PLANNED else None
        if held and held.moved_start:
            there = _visit_stop(visit, held.moved_van_id, held.moved_start, zone)
            stops.append(replace(there, moves_for=held))
        elif visit.planned_start:
            stops.append(_visit_stop(visit, visit.van_id, visit.planned_start, zone))
    return [stop for stop in stops if first <= stop.start < last]


def _held_stop(held: HeldHour, zone: ZoneInfo) -> DiaryStop:
    shift = shift_of_hold(held, zone)
    return DiaryStop(
        held.job, shift, held.start, held.minutes, held.head_count, _site(held.farm_id), held.farm.name
    )


def _visit_stop(visit: Visit, van: int | None, start: datetime, zone: ZoneInfo) -> DiaryStop:
    return DiaryStop(
        job=f"visit-{visit.pk}",
        shift=f"van-{van}-{local_day(start, zone)}",
        start=start,
        minutes=visit.expected_minutes,
        cows=visit.head_count,
        site=_site(visit.farm_id),
        name=visit.farm.name,
        visit=visit,
    )


def _site(farm: int) -> str:
    return f"farm-{farm}"


def stand_by_hour(stop: DiaryStop, job: Part | None, shifts: Sequence[Part]) -> Part:
    """The stop as a job of the problem: promised if it is, or if no rule would let it stand where it stands."""
    if job is not None and "fixed" in job:
        return job
    if job is not None and not stop.is_promised and _may_stand(stop, job, shifts):
        return job
    end = stop.start + timedelta(minutes=stop.minutes)
    return {
        "id": stop.job,
        "site": stop.site,
        "minutes": stop.minutes,
        "cows": stop.cows,
        "windows": [{"start": stop.start.isoformat(), "end": end.isoformat()}],
        "fixed": {"shift": stop.shift, "start": stop.start.isoformat()},
    }


def _may_stand(stop: DiaryStop, job: Part, shifts: Sequence[Part]) -> bool:
    end = stop.start + timedelta(minutes=stop.minutes)
    shift = next(shift for shift in shifts if shift["id"] == stop.shift)
    crews, windows = job.get("crews"), job["windows"]
    if isinstance(crews, list) and shift["crew"] not in crews:
        return False
    spans = [shift, *windows] if isinstance(windows, list) else [shift]
    fits = [_at(span["start"]) <= stop.start and end <= _at(span["end"]) for span in spans]
    return fits[0] and any(fits[1:])


def _at(text: object) -> datetime:
    return datetime.fromisoformat(str(text))
