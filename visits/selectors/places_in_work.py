"""Where a business drives these weeks."""

from farms.models import Farm
from trimops.kernel.scope import Scope
from visits.domain.travel.place import Place
from visits.models import Van, Visit
from visits.selectors.reckoned_drives import base_of, place_of


def places_in_work(scope: Scope) -> list[Place]:
    """The bases of the vans that go out, and the farms with a visit that is not over. Two queries."""
    vans = Van.objects.within(scope).filter(is_active=True).order_by("id")
    busy = Visit.objects.within(scope).open().values("farm_id")
    farms = Farm.objects.within(scope).filter(pk__in=busy).order_by("id")
    return [base_of(van) for van in vans] + [place_of(farm) for farm in farms]
