"""Public holidays where a business works, and whether its vans go out on them."""

from datetime import date

from trimops.accounts.models import Business
from trimops.kernel.public_holidays import public_holidays


def holidays_between(business: Business, first: date, last: date) -> dict[date, str]:
    """Day -> name, from `first` to `last`, both among them. No query."""
    return public_holidays(business.country, business.region, first, last)


def days_stayed_in(business: Business, first: date, last: date) -> frozenset[date]:
    """The holidays on which no van goes out: none where the business works on them."""
    return frozenset() if business.works_holidays else frozenset(holidays_between(business, first, last))
