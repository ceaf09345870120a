"""The concentrate that was mixed for wash-downs, as lines of the stock ledger."""

from collections import defaultdict
from datetime import datetime
from decimal import Decimal

from visits.domain.kit.disinfectant_amount import disinfectant_amount
from visits.domain.kit.stock_kinds import Unit, UseOf
from visits.domain.kit.weight_and_volume import in_unit
from visits.models import Visit, WashDown
from visits.services.kit.book_uses import Booking, UseAt, book_uses, booked_uses
from visits.services.kit.stock_place import stock_place_of


def use_wash_kit(*, visit: Visit, noted_at: datetime) -> None:
    """Bring the ledger to what the visit's wash-downs say: changed with them, taken back with them.

    A wash-down without a consumable or litres, with a dilution that cannot be read, or of a powder counted in ml
    without its density, uses nothing that could be counted: the stock's next count finds it.
    """
    place = stock_place_of(visit).pk
    wanted: defaultdict[UseAt, Decimal] = defaultdict(Decimal)
    for wash in WashDown.objects.within(visit.scope).filter(visit=visit).select_related("consumable"):
        if amount := _amount(wash):
            wanted[UseAt(wash.consumable_id or 0, place, wash.washed_at)] += amount
    book_uses(booking=Booking(visit, UseOf.WASH, wanted, noted_at), booked=booked_uses(visit, UseOf.WASH))


def _amount(wash: WashDown) -> Decimal | None:
    """Of the consumable, in its own unit; None where it cannot be told."""
    item = wash.consumable
    if item is None or wash.litres is None:
        return None
    counted = Unit(item.unit)
    mixed = disinfectant_amount(wash.dilution, wash.litres, counted_in=counted)
    return in_unit(mixed[0], Unit(mixed[1]), counted, item.grams_per_ml) if mixed else None
