"""What will not be paid any more is written off."""

from datetime import datetime
from decimal import Decimal

from django.db import transaction

from invoicing.domain.minor_units import minor_digits
from invoicing.domain.money_words import in_words
from invoicing.domain.settling import SettledBy, is_part_of
from invoicing.models import Allocation, Invoice
from invoicing.services.lock_period import refuse_locked
from invoicing.services.settle_invoice import settle_invoice
from invoicing.services.want_reason import want_reason
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken


class CannotWriteOff(RuleBroken):
    """That much of it is not open."""

    code = "cannot_write_off"


@transaction.atomic
def write_off(
    *, invoice: Invoice, reason: str, at: datetime, by: User, amount: Decimal | None = None
) -> Allocation:
    """Write off `amount` of an issued invoice, or (None) all that is open of it, as of today.

    CannotWriteOff for a draft, a credit note or an amount that does not fit; ReasonMissing without a reason. What it
    means for the tax is for the accountant: the invoice itself stays as it is.
    """
    row = invoice.locked()
    because = want_reason(words=reason, ask="Say why it is written off: the reason is kept.")
    if not row.is_issued or row.is_credit_note:
        raise CannotWriteOff("Only an issued invoice is written off.")
    amount = row.open_amount if amount is None else amount
    if not is_part_of(amount, row.open_amount, minor_digits(row.currency)):
        open_words = in_words(row.open_amount, row.currency)
        raise CannotWriteOff(f"{open_words} is open of {row.number}: write off that or less.")
    day = max(local_day(at, row.business.zone), row.issued_on or row.tax_point)
    refuse_locked(scope=row.scope, day=day)
    made = Allocation(business_id=row.business_id, invoice=row, kind=SettledBy.WRITE_OFF.value)
    made.amount, made.on, made.reason = amount, day, because[:200]
    made.noted_at, made.noted_by = at, by
    made.full_clean()
    made.save()
    settle_invoice(invoice=row)
    return made
