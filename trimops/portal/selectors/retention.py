"""How long a business keeps things, and from which moment on."""

from datetime import datetime, timedelta

from django.utils.timezone import localtime

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from trimops.portal.models import RetentionRules

MONTHS_IN_YEAR = 12
LAST_DAY_OF_ALL_MONTHS = 28


def retention_of(scope: Scope) -> RetentionRules:
    """The business's own periods, or the usual ones, not kept. One query."""
    found = RetentionRules.objects.within(scope).first()
    return found or RetentionRules(business_id=scope.business_id)


def months_before(at: datetime, months: int) -> datetime:
    """The same hour so many months ago; of days that not every month has, the 28th (so a little longer is kept)."""
    whole = at.year * MONTHS_IN_YEAR + at.month - 1 - months
    day = min(at.day, LAST_DAY_OF_ALL_MONTHS)
    return at.replace(year=whole // MONTHS_IN_YEAR, month=whole % MONTHS_IN_YEAR + 1, day=day)


def days_before(at: datetime, days: int) -> datetime:
    """The same moment so many days ago."""
    return at - timedelta(days=days)


def books_kept_until(business: Business, rules: RetentionRules, at: datetime) -> int:
    """The year until whose end what is booked at the aware instant `at` stays at least."""
    return localtime(at, business.zone).year + rules.books_years
