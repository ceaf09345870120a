"""What was ordered has come: it lies in stock, and its lines are expected no more."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction

from visits.models import StockMovement, StockPlace, SupplyLine, SupplyOrder
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.call_off_order import expect_no_more
from visits.services.kit.place_order import OrderRefused
from visits.services.kit.stock_word import StockWord, booked_before


@dataclass(frozen=True)
class ArrivedLine:
    """What came of one line: `quantity` in the consumable's unit, `cost` of the whole of it without tax (None: not
    known), its lot and date as on the label. `closes`: the rest will not come; with no quantity, nothing came of it.
    """

    line: SupplyLine
    quantity: Decimal
    cost: Decimal | None = None
    lot_code: str = ""
    expires_on: date | None = None
    closes: bool = False


@transaction.atomic
def receive_supply(
    *, order: SupplyOrder, place: StockPlace, arrived: Sequence[ArrivedLine], word: StockWord
) -> list[StockMovement]:
    """Book what came into `place` and close the lines of which all came or the rest will not.

    More than was ordered may come. The same `uid` again gives what was booked then. OrderRefused for nothing, for lines
    of another order and for lines that are closed; StockRefused or ValidationError as `buy_stock` has them.
    """
    order = order.locked()
    if before := booked_before(order.scope, word):
        return before
    lines = _open_lines(order)
    _refuse(arrived, lines)
    came = [each for each in arrived if each.quantity]
    rows = [] if not came else _buy(order, place, came, word)
    for each in arrived:
        if not each.quantity:
            expect_no_more(line=each.line, at=word.noted_at)
    return rows


def _open_lines(order: SupplyOrder) -> set[int]:
    rows = SupplyLine.objects.within(order.scope).filter(order=order, closed_at__isnull=True).order_by("pk")
    return {line.pk for line in rows.locked()}


def _refuse(arrived: Sequence[ArrivedLine], lines: set[int]) -> None:
    if not any(each.quantity or each.closes for each in arrived):
        raise OrderRefused("Say how much came of at least one line.")
    for each in arrived:
        if each.line.pk not in lines:
            raise OrderRefused(
                f"{each.line.consumable.name} of this order is noted already or called off: look at the order again."
            )


def _buy(
    order: SupplyOrder, place: StockPlace, came: Sequence[ArrivedLine], word: StockWord
) -> list[StockMovement]:
    bought = [
        BoughtItem(
            consumable=each.line.consumable,
            quantity=each.quantity,
            cost=each.cost,
            lot_code=each.lot_code,
            expires_on=each.expires_on,
            line=each.line,
            closes=each.closes,
        )
        for each in came
    ]
    return buy_stock(place=place, bought=bought, word=word, supplier=order.supplier)
