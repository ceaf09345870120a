"""What somebody says of the stock, short."""

from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

from tests.factories import NOON
from visits.models import StockMovement
from visits.services.kit.buy_stock import BoughtItem, buy_stock
from visits.services.kit.stock_word import Amount, StockWord


def word(house, at=NOON, noted_at=None, uid=None, note=""):
    return StockWord(at, noted_at or NOON + timedelta(days=2), house.owner, uid or uuid4(), note)


def amount(item, quantity, lot=None):
    return Amount(item, Decimal(quantity), lot)


def bought(place, item, quantity, cost=None, at=NOON, **words):
    """The line of what was bought."""
    owner = place.business.memberships.get(role="owner").user
    cost = None if cost is None else Decimal(cost)
    said = StockWord(at, at, owner, uuid4())
    (line,) = buy_stock(place=place, bought=[BoughtItem(item, Decimal(quantity), cost, **words)], word=said)
    return line


def ledger(item):
    rows = StockMovement.objects.within(item.scope).filter(consumable=item).order_by("at", "pk")
    return [(row.kind, row.place.van_id is not None, row.quantity) for row in rows.select_related("place")]
