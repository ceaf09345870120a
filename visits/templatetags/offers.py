"""Words of what an offer adds."""

from datetime import date, datetime

from django import template

from trimops.web.templatetags.figures import MINUS, how_long, km, money
from trimops.web.templatetags.moments import clock
from visits.selectors.offer_lines import OfferLine

register = template.Library()


@register.filter
def adds(line: OfferLine, currency: str) -> str:
    """`+38 min, +21.0 km, +£31.20`."""
    return ", ".join(map(_signed, (how_long(line.minutes), km(line.metres), money(line.money, currency))))


@register.filter
def arrive(first: datetime, last: datetime) -> str:
    """`arrive between 09:40 and 11:10`, or `arrive at 09:40` where there is no more room than that."""
    if clock(first) == clock(last):
        return f"arrive at {clock(first)}"
    return f"arrive between {clock(first)} and {clock(last)}"


@register.filter
def iso(value: date) -> str:
    """A day or an instant as a form sends it back."""
    return value.isoformat()


def _signed(words: str) -> str:
    """The words with their sign, a minus as wide as the plus."""
    plain = words.replace("-", MINUS)
    return plain if plain.startswith(MINUS) else f"+{plain}"
