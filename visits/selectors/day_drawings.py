"""The drawings of one day of a plan: each van's ribbon for desk and phone, and the map of its routes."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, time

from trimops.kernel.clock import at_local
from trimops.paper.colours import Meaning
from trimops.paper.to_svg import to_svg
from visits.documents.day_ribbon import PHONE_WIDTH, day_ribbon
from visits.documents.day_ribbon_content import DayRibbon, RibbonVisit
from visits.documents.route_map import route_map
from visits.documents.route_map_content import MapPlace, MapRoute, RouteMap
from visits.selectors.plan_rows import HeldView, ShiftView, StopView

DESK_WIDTH = 215.0
"""Drawn this wide and shown about 1,200 px wide, its smallest words are 16 px."""
MAP_WIDTH, MAP_HEIGHT = 76.0, 84.0
"""Shown 340 px wide: its words are 15 px."""

MEANINGS = {"urgent": Meaning.URGENT, "due": Meaning.DUE, "planned": Meaning.PLANNED}


@dataclass(frozen=True)
class ShiftDrawing:
    """A van's day with its ribbon (SVG) across and down."""

    shift: ShiftView
    wide: str
    narrow: str


def shift_drawings(day: date, shifts: Sequence[ShiftView]) -> list[ShiftDrawing]:
    """Each stop with the number that its farm wears on the map. ValueError where a van does not go out."""
    numbers = map_of(day, shifts).numbered()
    return [_shift_drawing(_numbered(shift, numbers)) for shift in shifts]


def _numbered(shift: ShiftView, numbers: Mapping[str, str]) -> ShiftView:
    stops = [replace(stop, turn=numbers[f"farm-{stop.visit.farm_id}"]) for stop in shift.stops]
    return replace(shift, stops=stops)


def _shift_drawing(shift: ShiftView) -> ShiftDrawing:
    ribbon = ribbon_of(shift)
    return ShiftDrawing(
        shift,
        to_svg(day_ribbon(ribbon, DESK_WIDTH), "ribbon ribbon-wide"),
        to_svg(day_ribbon(ribbon, PHONE_WIDTH), "ribbon ribbon-narrow"),
    )


def ribbon_of(shift: ShiftView) -> DayRibbon:
    """What the ribbon of that day shows, from six to six or longer."""
    if shift.leave is None or shift.back is None:
        raise ValueError(f"{shift.id} does not go out")
    zone, meal = shift.leave.tzinfo, shift.meal
    first, last = (at_local(shift.day, time(hour), shift.van.business.zone) for hour in (6, 18))
    return DayRibbon(
        title=f"{shift.van.name}, {shift.leave:%A %-d %B}",
        begins=min(first.astimezone(zone), shift.leave),
        ends=max(last.astimezone(zone), shift.back),
        drives=tuple(shift.drives),
        visits=(*map(_ribbon_visit, shift.stops), *map(_ribbon_hold, shift.held)),
        meal=meal if meal and meal[0] < shift.back and meal[1] > shift.leave else None,
    )


def _ribbon_visit(stop: StopView) -> RibbonVisit:
    visit = stop.visit
    return RibbonVisit(
        visit.farm.name,
        stop.start,
        stop.finish,
        visit.head_count,
        visit.farm.hygiene_level,
        MEANINGS[stop.meaning],
        stop.milking,
    )


def _ribbon_hold(held: HeldView) -> RibbonVisit:
    hour = held.hour
    name = f"{hour.farm.name} (hour held)"
    return RibbonVisit(name, held.start, held.finish, hour.head_count, hour.farm.hygiene_level)


def day_map(day: date, shifts: Sequence[ShiftView]) -> str:
    """The map (SVG) of the routes of these shifts."""
    return to_svg(route_map(map_of(day, shifts), MAP_WIDTH, MAP_HEIGHT), "map")


def map_of(day: date, shifts: Sequence[ShiftView]) -> RouteMap:
    """Bases, farms and routes; with several vans each farm wears its van's letter."""
    bases = {shift.van.pk: shift.van for shift in shifts}
    places = [
        MapPlace(f"van-{van.pk}", van.base_name, float(van.base_latitude), float(van.base_longitude), "base")
        for van in bases.values()
    ]
    farms = {stop.visit.farm_id: stop for shift in shifts for stop in shift.stops}
    places += [
        MapPlace(
            f"farm-{pk}",
            stop.visit.farm.name,
            float(stop.visit.farm.latitude),
            float(stop.visit.farm.longitude),
            meaning=MEANINGS[stop.meaning],
        )
        for pk, stop in farms.items()
    ]
    routes = [_route(shift) for shift in shifts if shift.stops]
    return RouteMap(f"Route of {day:%A %-d %B}", tuple(places), tuple(routes))


def _route(shift: ShiftView) -> MapRoute:
    base = f"van-{shift.van.pk}"
    return MapRoute(shift.van.name, (base, *(f"farm-{stop.visit.farm_id}" for stop in shift.stops), base))
