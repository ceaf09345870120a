"""Prices, which may have more decimals than the money of a total, and changes with their sign."""

from decimal import Decimal

from django import template

from invoicing.documents.invoice_columns import unit_words as paper_unit
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.read_price_lines import plain_amount
from trimops.web.templatetags.figures import MINUS, SIGNS

register = template.Library()


@register.filter
def price(amount: Decimal | None, currency: str = "") -> str:
    """0.455 is £0.455, 12.5 is £12.50. Nothing known is a dash."""
    if amount is None:
        return "–"
    unit = SIGNS.get(currency, f"{currency}\N{NO-BREAK SPACE}" if currency else "")
    return f"{unit}{plain_amount(amount, minor_digits(currency))}"


@register.filter
def unit_words(unit: str) -> str:
    """As the paper says it: "km" for KMT, nothing for single pieces."""
    return paper_unit(unit)


@register.filter
def signed(number: Decimal) -> str:
    """+8.7 or a minus sign and 3.2."""
    return f"{MINUS if number < 0 else '+'}{abs(number):f}"
