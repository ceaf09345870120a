"""The reference rate of the central bank is put down from a day on."""

from datetime import date
from decimal import Decimal

from django.db import transaction

from invoicing.models import ReferenceRate
from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope

MOST_PERCENT = 100


class RateRefused(RuleBroken):
    """The rate cannot be kept as it is; the message says what to mend."""

    code = "rate_refused"


@transaction.atomic
def set_reference_rate(
    *, business: Business, valid_from: date, percent: Decimal, source: str
) -> ReferenceRate:
    """Keep the rate that holds from that day; a second one for the day takes its place. RateRefused says what to mend.

    Reminders that went out keep the figures they went out with.
    """
    if not source.strip():
        raise RateRefused("Say where the rate was read: it is printed beside the interest.")
    if abs(percent) >= MOST_PERCENT:
        raise RateRefused("A rate is given in percent a year, such as 4.25.")
    rows = ReferenceRate.objects.within(Scope(business.pk)).locked()
    row = rows.filter(valid_from=valid_from).first() or ReferenceRate(
        business=business, valid_from=valid_from
    )
    row.percent, row.source = percent, source.strip()
    row.full_clean()
    row.save()
    return row
