"""The place whose stock a van, or the yard, works from. It is there as soon as it is asked for."""

from trimops.kernel.scope import Scope
from visits.models import StockPlace, Van, Visit

STORE = "Store"


def stock_place_of(visit: Visit) -> StockPlace:
    """Where a visit takes its stock from: its van, or the store where it has none."""
    if visit.van_id is None:
        return store_of(visit.scope)
    place = StockPlace.objects.within(visit.scope).filter(van_id=visit.van_id).first()
    return place or place_of_van(Van.objects.within(visit.scope).get(pk=visit.van_id))


def place_of_van(van: Van) -> StockPlace:
    """The van's own place; made when nobody has asked for it yet. Two at once make one."""
    rows = StockPlace.objects.within(van.scope)
    place = rows.filter(van=van).first()
    if place is None:
        row = StockPlace(business_id=van.business_id, van=van, name=name_of_place(van))
        StockPlace.objects.bulk_create([row], ignore_conflicts=True)
        place = rows.get(van=van)
    return place


def name_of_place(van: Van) -> str:
    """The van's name, told from the store's where it is the same."""
    return van.name if van.name != STORE else f"{van.name} (van)"


def store_of(scope: Scope) -> StockPlace:
    """The business's store; made when nobody has asked for it yet. Two at once make one."""
    rows = StockPlace.objects.within(Scope(scope.business_id))
    place = rows.filter(van__isnull=True).first()
    if place is None:
        row = StockPlace(business_id=scope.business_id, name=STORE)
        StockPlace.objects.bulk_create([row], ignore_conflicts=True)
        place = rows.get(van__isnull=True)
    return place
