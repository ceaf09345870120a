"""What a forecast is held against, of a consumable whose stock a page has read already."""

from collections.abc import Iterable

from visits.domain.kit.forecast.stock_ahead import DatedLot, OnOrder, StockAhead
from visits.selectors.kit.lots_left import LotAt
from visits.selectors.kit.open_supply import OnItsWay
from visits.selectors.kit.stock_now import ItemStock


def stock_ahead_of(stock: ItemStock, on_order: Iterable[OnItsWay], lots: Iterable[LotAt]) -> StockAhead:
    """What lies there, what comes, and the lots that have a date."""
    return StockAhead(
        balance=stock.balance,
        on_order=tuple(OnOrder(each.expected_on, each.quantity) for each in on_order),
        lots=tuple(
            DatedLot(each.quantity, each.lot.expires_on) for each in lots if each.lot and each.lot.expires_on
        ),
    )
