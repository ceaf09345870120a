"""Lots with their places and dates, as pages show them."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from visits.models import StockLot, StockPlace
from visits.selectors.kit.lots_left import LotAt
from visits.selectors.kit.stock_now import ItemStock

SOON = timedelta(days=30)


@dataclass(frozen=True)
class DatedLot:
    """So much of a lot at a place, looked at on `today`. `lot` None: nobody knows its number, nor its date."""

    lot: StockLot | None
    place: StockPlace
    quantity: Decimal
    today: date

    @property
    def expires_on(self) -> date | None:
        return self.lot.expires_on if self.lot else None

    @property
    def is_past(self) -> bool:
        return self.expires_on is not None and self.expires_on < self.today

    @property
    def is_soon(self) -> bool:
        """Within the next thirty days."""
        day = self.expires_on
        return day is not None and self.today <= day <= self.today + SOON


def dated_lots(stock: ItemStock, lots: Sequence[LotAt], today: date) -> list[DatedLot]:
    """All that is left, the oldest date first, without a date last."""
    places = {each.place.pk: each.place for each in stock.places}
    found = [
        DatedLot(each.lot, places[each.place], each.quantity, today) for each in lots if each.quantity > 0
    ]
    return sorted(found, key=lambda each: (each.expires_on or date.max, each.lot is None, each.place.pk))
