"""The mileage allowance is put down from a day on."""

from calendar import monthrange

from django.db import transaction

from invoicing.domain.mileage_allowance import AllowanceRate
from invoicing.models import MileageRate
from invoicing.services.lock_period import refuse_locked
from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope

LEAP_YEAR = 2028
MONTHS = range(1, 13)


class MileageRateRefused(RuleBroken):
    """The allowance cannot be kept as it is; the message says what to mend."""

    code = "mileage_rate_refused"


@transaction.atomic
def set_mileage_rate(*, business: Business, rate: AllowanceRate, source: str) -> MileageRate:
    """Keep the allowance that holds from that day; a second one for the day takes its place.

    MileageRateRefused, and PeriodLocked where it would change sums of a closed period.
    """
    _refuse_nonsense(rate, source)
    refuse_locked(scope=Scope(business.pk), day=rate.valid_from, what="The allowance's first day")
    rows = MileageRate.objects.within(Scope(business.pk)).locked()
    row = rows.filter(valid_from=rate.valid_from).first()
    row = row or MileageRate(business=business, valid_from=rate.valid_from)
    row.unit, row.first_rate, row.then_rate = rate.unit.value, rate.first_rate, rate.then_rate
    row.up_to = None if rate.up_to is None else int(rate.up_to)
    row.year_begins_month, row.year_begins_day = rate.begins
    row.source = source.strip()
    row.full_clean()
    row.save()
    return row


def _refuse_nonsense(rate: AllowanceRate, source: str) -> None:
    month, day = rate.begins
    if month not in MONTHS or not 1 <= day <= monthrange(LEAP_YEAR, month)[1]:
        raise MileageRateRefused(
            f"The {day}. of month {month} is no day: say when the year of the allowance begins."
        )
    if rate.up_to is not None and (rate.up_to <= 0 or rate.up_to != int(rate.up_to)):
        raise MileageRateRefused(
            "The limit is a whole distance above nought; leave it empty where there is none."
        )
    if rate.first_rate < 0 or rate.then_rate < 0:
        raise MileageRateRefused("A rate is not below nought.")
    if not source.strip():
        raise MileageRateRefused("Say where the rates were read: the accountant will ask.")
