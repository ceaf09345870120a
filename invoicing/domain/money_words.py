"""An amount in a sentence."""

from decimal import Decimal

from invoicing.domain.minor_units import minor_digits
from trimops.kernel.money import round_money


def in_words(amount: Decimal, currency: str) -> str:
    """`1234.5000` of EUR is "1,234.50 EUR"; at the decimals of the currency."""
    digits = minor_digits(currency)
    return f"{round_money(amount, digits):,.{digits}f} {currency}"
