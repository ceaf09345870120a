"""Figures as the trade writes them: money, counts, kilometres, lengths of time."""

from datetime import timedelta
from decimal import Decimal
from typing import Final

from django import template

from trimops.kernel.money import round_money

register = template.Library()

MINUS: Final = "\N{MINUS SIGN}"
SIGNS: Final = {"GBP": "£", "EUR": "€", "USD": "$"}
# ISO 4217: these currencies have no minor unit; every other one the program knows has two digits.
WHOLE_ONLY: Final = frozenset({"JPY", "KRW", "ISK", "CLP", "XAF", "XOF", "VND", "PYG", "UGX", "RWF"})


@register.filter
def money(amount: Decimal | int | None, currency: str = "") -> str:
    """`1234.5|money:"GBP"` is £1,234.50; without a sign of its own the code is written: CHF 12.00 (held together).

    Nothing known (None) is a dash. Rounds by the one rounding rule. Floats are refused: TypeError.
    """
    if amount is None:
        return "–"
    if isinstance(amount, float):
        raise TypeError("money is Decimal, never a float")
    digits = 0 if currency in WHOLE_ONLY else 2
    rounded = round_money(Decimal(amount), digits)
    sign = MINUS if rounded < 0 else ""
    unit = SIGNS.get(currency, f"{currency}\N{NO-BREAK SPACE}" if currency else "")
    return f"{sign}{unit}{abs(rounded):,.{digits}f}"


@register.filter
def count(value: Decimal | int | None) -> str:
    """9000 is 9,000; Decimal keeps its places; nothing known is a dash."""
    if value is None:
        return "–"
    return f"{value:,}".replace("-", MINUS)


@register.filter
def km(metres: Decimal | float | None) -> str:
    """Metres as kilometres: one decimal under 100 km, whole ones above. 12430 is 12.4 km."""
    if metres is None:
        return "–"
    kilometres = float(metres) / 1000
    return f"{kilometres:,.1f} km" if abs(kilometres) < 99.95 else f"{kilometres:,.0f} km"


@register.filter
def how_long(value: timedelta | int | None) -> str:
    """A length of time (timedelta, or whole minutes) to the nearest minute: 40 min, 2 h, 2 h 15 min."""
    if value is None:
        return "–"
    minutes = round(value.total_seconds() / 60) if isinstance(value, timedelta) else value
    sign = MINUS if minutes < 0 else ""
    hours, rest = divmod(abs(minutes), 60)
    parts = [f"{hours} h"] if hours else []
    if rest or not hours:
        parts.append(f"{rest} min")
    return sign + " ".join(parts)


@register.filter
def things(number: int, words: str) -> str:
    """The number with its noun: `1|things:"cow,cows"` is 1 cow, 63 is 63 cows."""
    one, many = words.split(",")
    return f"{count(number)} {one if number == 1 else many}"
