"""What is to be ordered, from whom, how much and why; what is on its way; what is late."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import ROUND_CEILING, Decimal

from trimops.kernel.scope import Scope
from visits.domain.kit.forecast.item_forecast import ItemForecast
from visits.domain.kit.item_outlook import chance_too_late, chance_words
from visits.domain.kit.kit_sheet import full_name
from visits.domain.kit.order_text import OrderedLine
from visits.domain.kit.order_why import Pressing, how_pressing, order_why
from visits.domain.kit.stock_kinds import Unit
from visits.models import Consumable, SupplyLine, SupplyOrder
from visits.selectors.kit.kit_forecast import UseModels, forecasts, stocks_ahead
from visits.selectors.kit.lots_left import LotsAt
from visits.selectors.kit.open_supply import OnItsWay, still_to_come
from visits.selectors.kit.stock_ahead_of import stock_ahead_of
from visits.selectors.kit.stock_now import ItemStock, stock_now


@dataclass(frozen=True)
class OrderRow:
    """One consumable in use: what the forecast advises today. `there`: in store and vans; `coming`: on order.

    Not `is_told`: nobody has said yet what lies anywhere, so nothing is advised.
    """

    consumable: Consumable
    forecast: ItemForecast
    there: Decimal
    coming: Sequence[OnItsWay]
    today: date
    is_told: bool = True

    @property
    def name(self) -> str:
        return full_name(self.consumable.name, self.consumable.size)

    @property
    def unit(self) -> Unit:
        return Unit(self.consumable.unit)

    @property
    def pressing(self) -> Pressing:
        return how_pressing(self.forecast, self.today) if self.is_told else Pressing.NOT_YET

    @property
    def is_today(self) -> bool:
        return self.pressing is Pressing.TODAY

    @property
    def packs(self) -> int:
        wanted = self.forecast.order_quantity / self.consumable.pack
        return int(wanted.to_integral_value(ROUND_CEILING))

    @property
    def why(self) -> str:
        return order_why(self.forecast, self.unit, self.there)

    @property
    def chance(self) -> str:
        """Of running out before it can be here, in words."""
        return chance_words(chance_too_late(self.forecast))

    @property
    def cost(self) -> Decimal | None:
        """Of what is advised, as a pack costs in the kit; None where no price is kept."""
        price = self.consumable.price
        return None if price is None else price * self.packs

    def line(self, packs: int) -> OrderedLine:
        """As it stands in the text of an order."""
        item = self.consumable
        return OrderedLine(item.name, item.size, self.unit, item.pack, packs)


@dataclass(frozen=True)
class SupplierList:
    """What one supplier sells to the business, what is pressing first; `supplier` may be empty."""

    supplier: str
    email: str
    rows: Sequence[OrderRow]

    @property
    def today(self) -> list[OrderRow]:
        return [row for row in self.rows if row.is_today]

    @property
    def soon(self) -> list[OrderRow]:
        """May go along: it will be wanted before the next look at the list."""
        return [row for row in self.rows if row.pressing is Pressing.SOON]

    @property
    def not_yet(self) -> list[OrderRow]:
        return [row for row in self.rows if row.pressing is Pressing.NOT_YET]


@dataclass(frozen=True)
class OpenOrder:
    """An order of which something is still to come."""

    order: SupplyOrder
    lines: Sequence[SupplyLine]
    today: date

    @property
    def expected_on(self) -> date:
        return max(line.expected_on for line in self.lines)

    @property
    def is_late(self) -> bool:
        return any(line.expected_on < self.today for line in self.lines)


@dataclass(frozen=True)
class OrderList:
    """All of it; suppliers of whom something is to be ordered today come first."""

    suppliers: Sequence[SupplierList]
    orders: Sequence[OpenOrder]

    @property
    def today(self) -> list[OrderRow]:
        return [row for each in self.suppliers for row in each.today]

    @property
    def late(self) -> list[OpenOrder]:
        return [each for each in self.orders if each.is_late]

    @property
    def untold(self) -> list[OrderRow]:
        """Never bought, moved or counted: whether they are to be ordered nobody knows."""
        return [row for each in self.suppliers for row in each.rows if not row.is_told]

    @property
    def next_by(self) -> OrderRow | None:
        """What is to be ordered next, where nothing is today."""
        rows = [row for each in self.suppliers for row in each.rows if row.is_told]
        later = [row for row in rows if row.forecast.order_by is not None]
        return min(later, key=lambda row: row.forecast.order_by or date.max, default=None)

    @property
    def seen(self) -> list[int]:
        """Keys of the order lines that are open."""
        return [line.pk for each in self.orders for line in each.lines]


def order_list(
    scope: Scope,
    today: date,
    models: UseModels | None = None,
    stocks: Sequence[ItemStock] | None = None,
    lots: Mapping[int, LotsAt] | None = None,
) -> OrderList:
    """Every consumable in use. At most twenty queries; fewer with what has been read already at hand."""
    orders = open_orders(scope, today)
    supply = still_to_come(line for each in orders for line in each.lines)
    used = [stock for stock in stocks or stock_now(scope) if stock.consumable.is_active]
    if lots is None:
        ahead = stocks_ahead(scope, used, supply)
    else:
        keys = [stock.consumable.pk for stock in used]
        ahead = {
            key: stock_ahead_of(stock, supply.get(key, ()), lots.get(key, ()))
            for key, stock in zip(keys, used, strict=True)
        }
    told = forecasts(scope, [stock.consumable for stock in used], ahead, today, models=models)
    rows = [
        OrderRow(stock.consumable, told[key], stock.balance, supply.get(key, ()), today, stock.is_told)
        for stock in used
        if (key := stock.consumable.pk) in told
    ]
    return OrderList(_by_supplier(rows), orders)


def open_orders(scope: Scope, today: date) -> list[OpenOrder]:
    """Orders of which something is still to come, the first to come at the top. One query."""
    lines = SupplyLine.objects.within(scope).filter(closed_at__isnull=True, order__called_off_at__isnull=True)
    found: defaultdict[SupplyOrder, list[SupplyLine]] = defaultdict(list)
    for line in lines.select_related("order__by", "consumable").order_by("expected_on", "pk"):
        found[line.order].append(line)
    return [OpenOrder(order, lines, today) for order, lines in found.items()]


def _by_supplier(rows: Iterable[OrderRow]) -> list[SupplierList]:
    found: defaultdict[str, list[OrderRow]] = defaultdict(list)
    for row in sorted(rows, key=_pressing):
        found[row.consumable.supplier.strip()].append(row)
    lists = [SupplierList(supplier, _email(rows), rows) for supplier, rows in found.items()]
    return sorted(lists, key=lambda each: (not each.today, not each.soon, not each.supplier, each.supplier))


def _email(rows: Sequence[OrderRow]) -> str:
    return next((row.consumable.supplier_email for row in rows if row.consumable.supplier_email), "")


def _pressing(row: OrderRow) -> tuple[int, date, str]:
    return list(Pressing).index(row.pressing), row.forecast.order_by or date.max, row.name


def closed_orders(scope: Scope, most: int = 10) -> list[SupplyOrder]:
    """The newest of which nothing more is to come. One query."""
    lines = SupplyLine.objects.within(scope).filter(closed_at__isnull=True)
    orders = SupplyOrder.objects.within(scope).exclude(pk__in=lines.values("order_id"))
    return list(orders[:most])
