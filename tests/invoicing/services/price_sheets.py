"""Price lists to set, for the tests of prices and tax."""

from datetime import date
from decimal import Decimal

from invoicing.domain.price_steps import PriceStep
from invoicing.domain.pricing import PriceItem
from invoicing.services.set_prices import ItemPrice, PriceSheet
from invoicing.services.set_tax_rate import RateWord, set_tax_rate

JANUARY, MARCH, JUNE = date(2026, 1, 1), date(2026, 3, 1), date(2026, 6, 1)


def rate(business, code="usual", percent="20", since=JANUARY, **changes):
    words = {"name": "", "category": "S", **changes}
    word = RateWord(code=code, percent=Decimal(percent), valid_from=since, **words)
    return set_tax_rate(business=business, word=word)


def sheet(since=MARCH, price="12.00", code="usual", **changes):
    """A list of functional trims and call-outs, with `steps` for the first."""
    steps = changes.pop("steps", (PriceStep(1, Decimal(price)),))
    prices = (
        ItemPrice(PriceItem.FUNCTIONAL, steps, code),
        ItemPrice(PriceItem.CALL_OUT, (PriceStep(1, Decimal(35)),), code),
    )
    return PriceSheet("Prices", since, changes.pop("prices", prices), **changes)
