"""A day that stands in an address: the week is the one that it lies in."""

from datetime import date

from trimops.api.fields import FIRST_YEAR, LAST_YEAR
from trimops.kernel.clock import monday_of
from trimops.kernel.errors import NotFound


def week_in_address(text: str) -> date:
    """The Monday of the week; NotFound where the address names no day."""
    try:
        day = date.fromisoformat(text)
    except ValueError:
        raise NotFound("There is nothing at this address.") from None
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise NotFound("There is nothing at this address.")
    return monday_of(day)
