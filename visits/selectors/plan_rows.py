"""A stored plan row by row: what one van does on one day, with its stops, laid on the week's common axis of hours."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from typing import ClassVar
from zoneinfo import ZoneInfo

from farms.domain.working_windows import MilkingTime
from trimops.kernel.clock import at_local
from visits.documents.day_ribbon_content import RibbonDrive, Span
from visits.models import HeldHour, PlanLock, Van, Visit
from visits.selectors.plan_holds import visit_key
from visits.selectors.standing_plan import shift_parts

Part = Mapping[str, object]


@dataclass(frozen=True)
class PlanRows:
    """Rows of the database that the plan's keys stand for."""

    zone: ZoneInfo
    vans: Mapping[int, Van]
    visits: Mapping[int, Visit]
    milkings: Mapping[tuple[int, int], list[MilkingTime]]
    locks: Mapping[int, PlanLock]
    held: Mapping[str, HeldHour]
    begun_by: datetime

    def at(self, text: object) -> datetime:
        return datetime.fromisoformat(str(text)).astimezone(self.zone)


@dataclass(frozen=True)
class StopView:
    """One stop. `kept` is "", "day" or "hour" as it is locked; `turn` its number on the day's map, "" without one."""

    visit: Visit
    start: datetime
    finish: datetime
    kept: str
    milking: tuple[Span, ...]
    travel_minutes: int
    km: float
    turn: str = ""
    is_held: ClassVar[bool] = False

    @property
    def meaning(self) -> str:
        """The mark's kind."""
        return {"urgent": "urgent", "recheck": "due"}.get(self.visit.reason, "planned")


@dataclass(frozen=True)
class HeldView:
    """An hour that is only held for a farm; it is not moved by hand."""

    hour: HeldHour
    start: datetime
    finish: datetime
    is_held: ClassVar[bool] = True


@dataclass(frozen=True)
class ShiftView:
    """One van's day; `leave` and `back` are None where it does not go out. `begins`, `ends`: the hours of the shift.

    `is_diary`: it is not of the plan but stands in the diary.
    """

    id: str
    van: Van
    day: date
    begins: datetime
    ends: datetime
    leave: datetime | None = None
    back: datetime | None = None
    work_minutes: int = 0
    km: float = 0.0
    cows: int = 0
    stops: Sequence[StopView] = ()
    drives: Sequence[RibbonDrive] = ()
    meal: Span | None = None
    has_begun: bool = False
    held: Sequence[HeldView] = ()
    is_diary: bool = False

    @property
    def lines(self) -> list[StopView | HeldView]:
        """Stops and held hours by time."""
        return sorted([*self.stops, *self.held], key=lambda line: line.start)


def shift_views(
    problem: Mapping[str, Sequence[Part]], plan: Mapping[str, Sequence[Part]], rows: PlanRows
) -> list[ShiftView]:
    """Every shift of the problem whose van is still there, by day and van; used or not."""
    used = {str(shift["id"]): shift for shift in plan["shifts"]}
    asked = [shift for shift in problem["shifts"] if shift_parts(shift["id"])[0] in rows.vans]
    views = [_view(shift, used.get(str(shift["id"])), rows) for shift in asked]
    return sorted(views, key=lambda view: (view.day, view.id))


def _view(asked: Part, shift: Part | None, rows: PlanRows) -> ShiftView:
    van, day = shift_parts(asked["id"])
    begins, ends = rows.at(asked["start"]), rows.at(asked["end"])
    plain = ShiftView(str(asked["id"]), rows.vans[van], day, begins, ends, has_begun=begins <= rows.begun_by)
    if shift is None:
        return plain
    stops, held = _known_stops(shift, rows), _held(shift, rows)
    if not stops and not held:
        return plain
    return ShiftView(
        id=plain.id,
        van=plain.van,
        day=day,
        begins=begins,
        ends=ends,
        leave=rows.at(shift["leave"]),
        back=rows.at(shift["return"]),
        work_minutes=round(float(str(shift["work_minutes"]))),
        km=float(str(shift["km"])),
        cows=int(str(shift["cows"])),
        stops=[_stop(stop, rows) for stop in stops],
        drives=tuple(_drives(shift, rows)),
        meal=_meal(shift, rows),
        has_begun=plain.has_begun,
        held=held,
    )


def _known_stops(shift: Part, rows: PlanRows) -> list[Part]:
    """Of visits that are still there."""
    return [stop for stop in _stops_of(shift) if visit_key(stop["job"]) in rows.visits]


def _held(shift: Part, rows: PlanRows) -> list[HeldView]:
    """Hours that are held still."""
    return [
        HeldView(rows.held[job], rows.at(stop["start"]), rows.at(stop["finish"]))
        for stop in _stops_of(shift)
        if (job := str(stop["job"])) in rows.held
    ]


def _stops_of(shift: Part) -> list[Part]:
    stops = shift["stops"]
    return stops if isinstance(stops, list) else []


def _stop(stop: Part, rows: PlanRows) -> StopView:
    visit = rows.visits[visit_key(stop["job"])]
    start, finish = rows.at(stop["start"]), rows.at(stop["finish"])
    lock = rows.locks.get(visit.pk)
    return StopView(
        visit,
        start,
        finish,
        "" if lock is None else "hour" if lock.start else "day",
        tuple(_milkings(visit, start.date(), rows)),
        round(float(str(stop["travel_minutes"]))),
        float(str(stop["km"])),
    )


def _milkings(visit: Visit, day: date, rows: PlanRows) -> Iterator[Span]:
    for milking in rows.milkings.get((visit.farm_id, day.weekday()), []):
        start = at_local(day, milking.start, rows.zone)
        yield start, start + timedelta(minutes=milking.minutes)


def _drives(shift: Part, rows: PlanRows) -> Iterator[RibbonDrive]:
    stops = _stops_of(shift)
    for stop in stops:
        arrive = rows.at(stop["arrive"])
        minutes = float(str(stop["travel_minutes"]))
        if minutes:
            yield RibbonDrive(arrive - timedelta(minutes=minutes), arrive, float(str(stop["km"])))
    last, back = rows.at(stops[-1]["finish"]), rows.at(shift["return"])
    home = float(str(shift["km"])) - sum(float(str(stop["km"])) for stop in stops)
    if back > last:
        yield RibbonDrive(last, back, max(0.0, home))


def _meal(shift: Part, rows: PlanRows) -> Span | None:
    meal = shift["meal"]
    return (rows.at(meal["start"]), rows.at(meal["end"])) if isinstance(meal, dict) else None


def axis_of(shifts: Sequence[ShiftView]) -> tuple[int, int]:
    """First and last full hour that all days of the week lie within."""
    begun = [(shift.leave or shift.begins) for shift in shifts]
    ended = [(shift.back or shift.ends) for shift in shifts]
    first = min((at.hour for at in begun), default=7)
    last = max((at.hour + (at.time() > time(at.hour)) for at in ended), default=17)
    return first, max(last, first + 8)
