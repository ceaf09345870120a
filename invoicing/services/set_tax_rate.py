"""A tax rate holds from a day on, or one that was not billed on is mended."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from django.db import transaction

from invoicing.domain.tax_scheme import rate_fault
from invoicing.models import TaxRate
from invoicing.selectors.billed_on import rate_is_billed_on
from invoicing.services.lock_period import refuse_locked
from trimops.accounts.models import Business
from trimops.kernel.errors import FieldRefused, RuleBroken
from trimops.kernel.scope import Scope


class RateMakesNoSense(FieldRefused):
    """No invoice can carry it; `field` says where to mend it."""

    code = "rate_makes_no_sense"


class RateBilledOn(RuleBroken):
    """Work has been billed at this rate."""

    code = "rate_billed_on"


class RateHoldsThen(RuleBroken):
    """Two rates of one code would begin on one day."""

    code = "rate_holds_then"


@dataclass(frozen=True)
class RateWord:
    """A rate: `category` of UNCL 5305 as EN 16931 uses it, `percent`, and where no tax is due, why."""

    code: str
    name: str
    category: str
    percent: Decimal
    valid_from: date
    reason: str = ""
    reason_code: str = ""


@transaction.atomic
def set_tax_rate(*, business: Business, word: RateWord, instead_of: TaxRate | None = None) -> TaxRate:
    """A new rate, or `instead_of` mended. A code keeps its earlier rates for the days before.

    RateMakesNoSense, RateHoldsThen, RateBilledOn, or PeriodLocked for a first day in a closed period.
    """
    fault = rate_fault(word.category, word.percent, word.reason, word.reason_code)
    if fault is not None:
        raise RateMakesNoSense(fault.field, fault.message)
    refuse_locked(scope=Scope(business.pk), day=word.valid_from, what="The rate's first day")
    row = TaxRate(business=business) if instead_of is None else locked_unbilled(instead_of)
    _refuse_twice(business, word, row)
    row.code, row.name, row.category, row.percent = word.code, word.name, word.category, word.percent
    row.reason, row.reason_code, row.valid_from = word.reason.strip(), word.reason_code, word.valid_from
    row.full_clean()
    row.save()
    return row


def locked_unbilled(rate: TaxRate) -> TaxRate:
    """The row under lock. RateBilledOn, or PeriodLocked, where it must stay as it is."""
    row = rate.locked()
    refuse_locked(scope=row.scope, day=row.valid_from, what="The rate's first day")
    if rate_is_billed_on(row):
        raise RateBilledOn(
            "Work is billed at this rate: it stays as it is. Add the new one from a later day."
        )
    return row


def _refuse_twice(business: Business, word: RateWord, row: TaxRate) -> None:
    rows = TaxRate.objects.within(Scope(business.pk)).filter(code=word.code, valid_from=word.valid_from)
    if rows.exclude(pk=row.pk or 0).exists():
        raise RateHoldsThen(f"A rate “{word.code}” begins on that day already: mend that one.")
