"""A small price book and a small visit to price: plain values, own figures throughout."""

from datetime import UTC, date, datetime
from decimal import Decimal as D
from uuid import UUID

from invoicing.domain.charges import Charge
from invoicing.domain.price_book import PriceBook, Tax
from invoicing.domain.price_steps import PriceStep
from invoicing.domain.pricing import PriceItem
from invoicing.domain.visit_work import VisitWork, WorkPiece, visit_key

UID = UUID("00000000-0000-4000-8000-000000000001")
TUESDAY = date(2026, 3, 3)
TEN = datetime(2026, 3, 3, 10, tzinfo=UTC)
USUAL = Tax("S", D(20))


def piece(item, cow="101", number=1, **changes):
    key = visit_key(UID, item) if item is PriceItem.CALL_OUT else f"trim/{cow}/{item.value}/{number}"
    words = {"trim_id": 1, "cow_words": cow, **changes}
    return WorkPiece(key, item, **({} if item is PriceItem.CALL_OUT else words))


def cows(number, item=PriceItem.FUNCTIONAL, start=101, **changes):
    return [piece(item, str(start + n), **changes) for n in range(number)]


def visit(*pieces, call_out=True, **changes):
    told = [*pieces, *([piece(PriceItem.CALL_OUT)] if call_out else [])]
    words = {"day": TUESDAY, "started_at": TEN, "finished_at": TEN, "is_urgent": False, **changes}
    return VisitWork(visit_id=7, uid=UID, farm_id=3, pieces=tuple(told), **words)


def book(prices=None, **changes):
    """Prices as `item="13.50"`, or as {from: price} for steps."""
    told = {"functional": "13.50", "call_out": "35", **(prices or {})}
    steps = {PriceItem(name): steps_of(price) for name, price in told.items()}
    taxes = dict.fromkeys(steps, USUAL)
    return PriceBook(steps, taxes, **changes)


def steps_of(price):
    told = price if isinstance(price, dict) else {1: price}
    return tuple(PriceStep(start, D(amount)) for start, amount in told.items())


def charge(item=PriceItem.FUNCTIONAL, quantity=1, **changes):
    keys = tuple(f"k{n}" for n in range(quantity))
    return Charge(visit(), item, "noted", keys, D(quantity), **changes)
