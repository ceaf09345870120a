"""All places where stock lies: the store, and every van that goes out."""

from trimops.kernel.scope import Scope
from visits.models import StockPlace, Van
from visits.services.kit.stock_place import place_of_van, store_of


def stock_places_of(scope: Scope) -> list[StockPlace]:
    """The store first, then the vans in their order; what nobody has asked for yet is made. Two queries once all are
    there."""
    rows = list(StockPlace.objects.within(scope).select_related("van"))
    known = {place.van_id for place in rows}
    missing = [van for van in Van.objects.within(scope).filter(is_active=True) if van.pk not in known]
    if None not in known:
        store_of(scope)
    for van in missing:
        place_of_van(van)
    if missing or None not in known:
        rows = list(StockPlace.objects.within(scope).select_related("van"))
    return [place for place in rows if place.van is None or place.van.is_active]
