"""The round a van made on the day of a visit, and how far it was."""

from collections.abc import Sequence
from decimal import Decimal
from itertools import pairwise

from django.db.models import Q
from django.db.models.functions import Coalesce

from invoicing.domain.pricing import NoPrice
from invoicing.domain.travel_charge import Travelled
from trimops.kernel.clock import from_to, local_day
from trimops.kernel.scope import Scope
from visits.domain.travel.place import Place
from visits.domain.visit_states import VisitState
from visits.models import Van, Visit
from visits.selectors.business_figures import figures_of
from visits.selectors.reckoned_drives import ReckonedDrives, base_of, place_of, reckoned_drives

DRIVEN = (VisitState.PLANNED, VisitState.CONFIRMED, VisitState.UNDER_WAY, VisitState.FINISHED)


def travelled_for(visit: Visit, *, with_round: bool) -> Travelled:
    """The way to the farm of `visit` and back to the base of its van; with the day's whole round where asked.

    The round is the base, that van's stops of the day in the order in which they were begun (those to come: are
    planned), and the base again. A stop called off is no part of it. By road map where it knows the road, else
    estimated. NoPrice when the visit has no van, so that nobody knows where it came from.
    """
    if visit.van is None:
        raise NoPrice("Travel is charged, but the visit has no van: nobody knows where it came from.")
    base, farm = base_of(visit.van), place_of(visit.farm)
    stops = _stops(visit, visit.van) if with_round else [visit]
    places = [place_of(stop.farm) for stop in stops]
    drives = reckoned_drives(visit.scope, figures_of(visit.scope).planning, [base, *places])
    ways = tuple(_km(drives, base, place) + _km(drives, place, base) for place in places)
    here = [stop.pk for stop in stops].index(visit.pk)
    return Travelled(
        one_way_km=_km(drives, base, farm),
        there_and_back_km=ways[here],
        source=_source(drives, [base, *places]),
        round_km=sum((_km(drives, a, b) for a, b in pairwise([base, *places, base])), Decimal(0)),
        ways_km=ways,
        place=here,
    )


def _stops(visit: Visit, van: Van) -> list[Visit]:
    began = visit.started_at or visit.planned_start or visit.finished_at
    if began is None:
        return [visit]
    day = local_day(began, visit.business.zone)
    start, end = from_to(day, day, visit.business.zone)
    rows = Visit.objects.within(visit.scope).in_state(*DRIVEN).filter(van=van)
    began_then = Q(started_at__gte=start, started_at__lt=end)
    to_come = Q(started_at__isnull=True, planned_start__gte=start, planned_start__lt=end)
    rows = rows.filter(began_then | to_come | Q(pk=visit.pk)).select_related("farm")
    return list(rows.order_by(Coalesce("started_at", "planned_start"), "id"))


def _km(drives: ReckonedDrives, a: Place, b: Place) -> Decimal:
    """To the metre."""
    return Decimal(str(round(drives.metres(a, b) / 1000, 3)))


def _source(drives: ReckonedDrives, places: Sequence[Place]) -> str:
    known = [drives.knows_road(a, b) for a, b in pairwise([*places, places[0]]) if a.key != b.key]
    if not any(known):
        return "estimated"
    return "by the road map" if all(known) else "by the road map and partly estimated"


def visits_by_key(scope: Scope, keys: Sequence[int]) -> dict[int, Visit]:
    """With farm, van and business at hand. One query."""
    rows = Visit.objects.within(scope).filter(pk__in=keys).select_related("farm", "van", "business")
    return {row.pk: row for row in rows}
