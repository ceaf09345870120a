"""What a forecast is held against: what lies there, what is on its way, and how the item is bought."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal


@dataclass(frozen=True)
class OnOrder:
    """So much is expected to come on that day; it can be used from the day after."""

    day: date
    quantity: Decimal


@dataclass(frozen=True)
class DatedLot:
    """What is left of a lot, and the last day on which it may be used."""

    quantity: Decimal
    expires_on: date


@dataclass(frozen=True)
class StockAhead:
    """`balance` may be below nought: then more was used than is known to have been bought. `lots` are those that have
    a date."""

    balance: Decimal
    on_order: tuple[OnOrder, ...] = ()
    lots: tuple[DatedLot, ...] = ()

    @property
    def position(self) -> Decimal:
        """What is there and what is on order."""
        return sum((order.quantity for order in self.on_order), self.balance)

    def there_on(self, day: date, today: date) -> Decimal:
        """What is there today and has come by the day before `day`; what is late is expected today."""
        come = (order.quantity for order in self.on_order if max(order.day, today) < day)
        return sum(come, self.balance)


@dataclass(frozen=True)
class SupplyTerms:
    """`service` is the chance of not running out that is ordered for (0 to 1). Days are calendar days."""

    pack: Decimal
    lead_days: int
    review_days: int
    service: float
    shelf_days: int | None = None
