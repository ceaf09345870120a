"""Drives by road that nobody will ask for again are forgotten."""

from datetime import datetime, timedelta

from django.db import transaction
from django.db.models import Q

from farms.models import Farm
from trimops.kernel.scope import Scope
from visits.domain.travel.leg_age import KEPT_DAYS
from visits.domain.travel.place import Place
from visits.models import RoadLeg, RoadTrouble, Van
from visits.selectors.roads_in_use import roads_in_use


@transaction.atomic
def sweep_roads(*, scope: Scope, at: datetime) -> int:
    """Forget drives from or to where no farm or van stands any more, of another map, or too old; how many."""
    keys, engine = _keys(scope), roads_in_use().engine
    is_stray = (
        ~Q(from_place__in=keys) | ~Q(to_place__in=keys) | Q(asked_at__lt=at - timedelta(days=KEPT_DAYS))
    )
    if engine:
        is_stray |= ~Q(engine=engine.key)
        RoadTrouble.objects.within(scope).exclude(engine=engine.key).delete()
    return RoadLeg.objects.within(scope).filter(is_stray).delete()[0]


def _keys(scope: Scope) -> set[str]:
    """Where the business's farms and vans are now."""
    farms = Farm.objects.within(scope).active().values_list("latitude", "longitude")
    vans = Van.objects.within(scope).filter(is_active=True).values_list("base_latitude", "base_longitude")
    return {Place("", float(latitude), float(longitude)).key for latitude, longitude in [*farms, *vans]}
