"""A stored plan of a week, laid out by day for a page: what, where, when, and the drawings."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from farms.domain.working_windows import MilkingTime
from farms.selectors.farm_windows import milkings_by_farm
from trimops.accounts.models import Business
from trimops.kernel.clock import at_local
from trimops.kernel.scope import Scope
from trimops.paper.colours import Meaning
from trimops.paper.to_svg import to_svg
from visits.documents.day_ribbon import PHONE_WIDTH, day_ribbon
from visits.documents.day_ribbon_content import DayRibbon, RibbonDrive, RibbonVisit, Span
from visits.documents.route_map import route_map
from visits.documents.route_map_content import MapPlace, MapRoute, RouteMap
from visits.models import Van, Visit, WeekPlan

Shift = Mapping[str, object]


@dataclass(frozen=True)
class ShiftView:
    """One van's day: leaving and coming home, sums, its visits and its ribbon for desk and phone (SVG)."""

    van: Van
    leave: datetime
    back: datetime
    work_minutes: int
    km: float
    cows: int
    visits: Sequence[Visit]
    ribbon_wide: str
    ribbon_narrow: str


@dataclass(frozen=True)
class DayView:
    """One day: its shifts, what it sums to, and the map (SVG)."""

    day: date
    shifts: Sequence[ShiftView]
    farms: int
    cows: int
    home_by: datetime
    map: str


@dataclass(frozen=True)
class LeftOut:
    visit: Visit
    detail: str


@dataclass(frozen=True)
class WeekView:
    """The days of a plan, and the visits it leaves out with the reason."""

    days: Sequence[DayView]
    left_out: Sequence[LeftOut]
    visits: int
    cows: int
    km: float


@dataclass(frozen=True)
class _Known:
    """Rows that the plan's keys stand for."""

    zone: ZoneInfo
    vans: Mapping[int, Van]
    visits: Mapping[int, Visit]
    milkings: Mapping[tuple[int, int], list[MilkingTime]]


def week_view(business: Business, week_plan: WeekPlan) -> WeekView:
    """The plan laid out; a visit or van that is gone since is passed over. A fixed number of queries."""
    scope = Scope(business.pk)
    plan: dict[str, list[dict[str, object]]] = week_plan.plan or {"shifts": [], "left_out": []}
    known = _Known(
        business.zone,
        Van.objects.within(scope).in_bulk(),
        Visit.objects.within(scope).select_related("farm").in_bulk(_visit_keys(plan)),
        milkings_by_farm(scope),
    )
    shifts = [view for shift in plan["shifts"] if (view := _shift_view(shift, known)) is not None]
    days = [_day_view(day, [s for s in shifts if s.leave.date() == day]) for day in _days(shifts)]
    out = [(known.visits.get(_key(item["job"])), str(item["detail"])) for item in plan["left_out"]]
    return WeekView(
        days,
        [LeftOut(visit, detail) for visit, detail in out if visit is not None],
        sum(len(shift.visits) for shift in shifts),
        sum(shift.cows for shift in shifts),
        sum(shift.km for shift in shifts),
    )


def _days(shifts: Sequence[ShiftView]) -> list[date]:
    return sorted({shift.leave.date() for shift in shifts})


def _visit_keys(plan: Mapping[str, list[dict[str, object]]]) -> list[int]:
    stops = [_key(stop["job"]) for shift in plan["shifts"] for stop in _stops(shift)]
    return stops + [_key(item["job"]) for item in plan["left_out"]]


def _key(job: object) -> int:
    return int(str(job).removeprefix("visit-"))


def _stops(shift: Shift) -> list[dict[str, object]]:
    stops = shift["stops"]
    return stops if isinstance(stops, list) else []


def _shift_view(shift: Shift, known: _Known) -> ShiftView | None:
    van = known.vans.get(int(str(shift["id"]).split("-")[1]))
    stops = [stop for stop in _stops(shift) if _key(stop["job"]) in known.visits]
    if van is None or not stops:
        return None
    leave, back = _at(shift["leave"], known), _at(shift["return"], known)
    ribbon = _ribbon(shift, stops, van, known)
    return ShiftView(
        van,
        leave,
        back,
        round(float(str(shift["work_minutes"]))),
        float(str(shift["km"])),
        int(str(shift["cows"])),
        [_planned(known.visits[_key(stop["job"])], stop, known) for stop in stops],
        to_svg(day_ribbon(ribbon), "ribbon ribbon-wide"),
        to_svg(day_ribbon(ribbon, PHONE_WIDTH), "ribbon ribbon-narrow"),
    )


def _planned(visit: Visit, stop: Mapping[str, object], known: _Known) -> Visit:
    """The visit with the hour that this plan gives it (it may not be accepted yet)."""
    visit.planned_start, visit.planned_finish = _at(stop["start"], known), _at(stop["finish"], known)
    return visit


def _at(text: object, known: _Known) -> datetime:
    return datetime.fromisoformat(str(text)).astimezone(known.zone)


def _ribbon(shift: Shift, stops: list[dict[str, object]], van: Van, known: _Known) -> DayRibbon:
    leave, back = _at(shift["leave"], known), _at(shift["return"], known)
    meal = shift["meal"]
    span = (_at(meal["start"], known), _at(meal["end"], known)) if isinstance(meal, dict) else None
    return DayRibbon(
        title=f"{van.name}, {leave:%A %-d %B}",
        begins=min(at_local(leave.date(), time(6), known.zone), leave),
        ends=max(at_local(leave.date(), time(18), known.zone), back),
        drives=tuple(_drives(shift, stops, known)),
        visits=tuple(_ribbon_visit(stop, known) for stop in stops),
        meal=span if span and span[0] < back and span[1] > leave else None,
    )


def _drives(shift: Shift, stops: list[dict[str, object]], known: _Known) -> Iterator[RibbonDrive]:
    for stop in stops:
        arrive = _at(stop["arrive"], known)
        minutes = float(str(stop["travel_minutes"]))
        if minutes:
            yield RibbonDrive(arrive - timedelta(minutes=minutes), arrive, float(str(stop["km"])))
    last = _at(stops[-1]["finish"], known)
    back = _at(shift["return"], known)
    home = float(str(shift["km"])) - sum(float(str(stop["km"])) for stop in stops)
    if back > last:
        yield RibbonDrive(last, back, max(0.0, home))


def _ribbon_visit(stop: Mapping[str, object], known: _Known) -> RibbonVisit:
    visit = known.visits[_key(stop["job"])]
    start, finish = _at(stop["start"], known), _at(stop["finish"], known)
    meaning = Meaning.URGENT if visit.reason == "urgent" else Meaning.PLANNED
    return RibbonVisit(
        visit.farm.name,
        start,
        finish,
        visit.head_count,
        visit.farm.hygiene_level,
        Meaning.DUE if visit.reason == "recheck" else meaning,
        tuple(_milkings(visit, start.date(), known)),
    )


def _milkings(visit: Visit, day: date, known: _Known) -> Iterator[Span]:
    for milking in known.milkings.get((visit.farm_id, day.weekday()), []):
        start = at_local(day, milking.start, known.zone)
        yield start, start + timedelta(minutes=milking.minutes)


def _day_view(day: date, shifts: Sequence[ShiftView]) -> DayView:
    return DayView(
        day,
        shifts,
        len({visit.farm_id for shift in shifts for visit in shift.visits}),
        sum(shift.cows for shift in shifts),
        max(shift.back for shift in shifts),
        to_svg(route_map(_map(day, shifts)), "map"),
    )


def _map(day: date, shifts: Sequence[ShiftView]) -> RouteMap:
    bases = {shift.van.pk: shift.van for shift in shifts}
    places = [
        MapPlace(f"van-{van.pk}", van.base_name, float(van.base_latitude), float(van.base_longitude), "base")
        for van in bases.values()
    ]
    farms = {visit.farm_id: visit.farm for shift in shifts for visit in shift.visits}
    places += [
        MapPlace(f"farm-{pk}", farm.name, float(farm.latitude), float(farm.longitude))
        for pk, farm in farms.items()
    ]
    routes = [_route(shift) for shift in shifts]
    return RouteMap(f"Route of {day:%A %-d %B}", tuple(places), tuple(routes))


def _route(shift: ShiftView) -> MapRoute:
    base = f"van-{shift.van.pk}"
    return MapRoute(shift.van.name, (base, *(f"farm-{visit.farm_id}" for visit in shift.visits), base))
