"""What one visit is charged for the road, by the rule of the price list, with the working in words."""

from decimal import Decimal

from invoicing.domain.charges import Charge
from invoicing.domain.price_book import PriceBook
from invoicing.domain.price_steps import step_parts
from invoicing.domain.pricing import NoPrice, PriceItem
from invoicing.domain.travel_charge import (
    DistanceUnit,
    Travelled,
    TravelRule,
    band_of,
    in_unit,
    shares_of_round,
)
from invoicing.domain.visit_work import VisitWork, visit_key
from trimops.kernel.money import round_money


def travel_charge(work: VisitWork, book: PriceBook, way: Travelled) -> Charge | None:
    """None where travel is not charged or there was no way to go. NoPrice where the rule lacks a price or a band."""
    rule = book.travel.rule
    if rule is TravelRule.NONE or not in_unit(way.there_and_back_km, book.travel.unit):
        return None
    if rule is TravelRule.DISTANCE:
        return _by_distance(work, book, way)
    if rule is TravelRule.BAND:
        return _by_band(work, book, way)
    return _shared(work, book, way)


def distance_item(unit: DistanceUnit) -> PriceItem:
    """The item that has the price of one unit."""
    return PriceItem.KILOMETRE if unit is DistanceUnit.KILOMETRE else PriceItem.MILE


def _by_distance(work: VisitWork, book: PriceBook, way: Travelled) -> Charge:
    item = distance_item(book.travel.unit)
    quantity = in_unit(way.there_and_back_km, book.travel.unit)
    return Charge(work, item, f"from the base and back, {way.source}", _key(work), quantity)


def _by_band(work: VisitWork, book: PriceBook, way: Travelled) -> Charge:
    unit = book.travel.unit
    distance = in_unit(way.one_way_km, unit)
    band = band_of(distance, book.travel.bands)
    if band is None:
        raise NoPrice(f"No band of travel reaches {distance} {unit.short}: add one without an end.")
    reach = (
        "beyond the other bands"
        if band.up_to is None
        else f"band up to {band.up_to.normalize():f} {unit.short}"
    )
    why = f"{distance} {unit.short} from the base, {way.source}: {reach}"
    return Charge(work, PriceItem.TRAVEL, why, _key(work), amount=band.price)


def _shared(work: VisitWork, book: PriceBook, way: Travelled) -> Charge:
    """The whole round at the price of a kilometre or mile, shared by each farm's own way there and back."""
    unit, digits = book.travel.unit, book.digits
    whole = in_unit(way.round_km, unit)
    steps = book.steps_of(distance_item(unit))
    parts = step_parts(whole, steps, book.step_rule) if whole else []
    cost = round_money(sum((part.quantity * part.unit_price for part in parts), Decimal(0)), digits)
    ways = [in_unit(km, unit) for km in way.ways_km]
    share = shares_of_round(cost, ways, digits)[way.place]
    why = (
        f"share of the day's round of {len(ways)}: {whole} {unit.short} cost {cost}, "
        f"shared by the way to each and back, {ways[way.place]} of {sum(ways, Decimal(0))} {unit.short}; {way.source}"
    )
    return Charge(work, PriceItem.TRAVEL, why, _key(work), amount=share)


def _key(work: VisitWork) -> tuple[str, ...]:
    return (visit_key(work.uid, PriceItem.TRAVEL),)
