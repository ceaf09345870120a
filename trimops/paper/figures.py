"""Numbers in words: counts, amounts of money, quantities and rates. No rounding of money happens here."""

from decimal import Decimal

_SIGNS = {"GBP": "£", "EUR": "€", "USD": "$"}
MINUS = "−"


def money(amount: Decimal, currency: str, digits: int = 2) -> str:
    """ "£1,234.50", "−€3.00", "CHF 20.00". ValueError when the amount has more decimals than the currency."""
    exact = amount.quantize(Decimal(1).scaleb(-digits))
    if exact != amount:
        raise ValueError(f"{amount} has more than {digits} decimals")
    sign = _SIGNS.get(currency, f"{currency} ")
    return f"{MINUS if exact < 0 else ''}{sign}{abs(exact):,}"


def plain_amount(amount: Decimal, digits: int = 2) -> str:
    """The amount without its currency, at least `digits` decimals, further ones kept: "1,234.50", "0.185"."""
    shown = max(digits, decimals(amount))
    return f"{MINUS if amount < 0 else ''}{abs(amount):,.{shown}f}"


def quantity(amount: Decimal) -> str:
    """ "28", "1.5", "1,200": no idle zeros."""
    return f"{MINUS if amount < 0 else ''}{abs(amount):,.{decimals(amount)}f}"


def rate(percent: Decimal) -> str:
    """ "20 %", "5.5 %" """
    return f"{quantity(percent)} %"


def counted(number: int, one: str, many: str = "") -> str:
    """ "1 cow", "28 cows" """
    return f"{number:,} {one if number == 1 else many or one + 's'}"


def decimals(amount: Decimal) -> int:
    """Digits after the point, idle zeros not counted."""
    exponent = amount.normalize().as_tuple().exponent
    return max(0, -exponent) if isinstance(exponent, int) else 0
