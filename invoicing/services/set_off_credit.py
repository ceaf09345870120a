"""A credit note is set off against an invoice that is still open."""

from datetime import date, datetime
from decimal import Decimal

from django.db import transaction

from invoicing.domain.minor_units import minor_digits
from invoicing.domain.money_words import in_words
from invoicing.domain.settling import SettledBy, is_part_of
from invoicing.models import Allocation, Invoice
from invoicing.services.lock_invoices import lock_invoices
from invoicing.services.lock_period import refuse_locked
from invoicing.services.settle_invoice import settle_invoice
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken


class CannotSetOff(RuleBroken):
    """That credit note cannot be set off against that invoice, or not by so much."""

    code = "cannot_set_off"


@transaction.atomic
def set_off_credit(
    *, credit_note: Invoice, invoice: Invoice, at: datetime, by: User, amount: Decimal | None = None
) -> Allocation:
    """Set `amount` of the credit note (None: as much as fits) off against the invoice.

    CannotSetOff when either is not issued, they are not of one payer and currency, or nothing fits.
    """
    rows = lock_invoices(scope=invoice.scope, keys=[credit_note.pk, invoice.pk])
    note, bill = rows[credit_note.pk], rows[invoice.pk]
    _refuse_strangers(note, bill)
    fits = min(note.open_amount, bill.open_amount)
    amount = fits if amount is None else amount
    if not is_part_of(amount, fits, minor_digits(bill.currency)):
        raise CannotSetOff(f"Up to {in_words(fits, bill.currency)} can be set off, and more than nought.")
    day = _day(note, bill, at)
    refuse_locked(scope=bill.scope, day=day)
    row = Allocation(business_id=bill.business_id, invoice=bill, kind=SettledBy.CREDIT.value)
    row.credit_note, row.amount, row.on, row.noted_at, row.noted_by = note, amount, day, at, by
    row.full_clean()
    row.save()
    settle_invoice(invoice=bill)
    settle_invoice(invoice=note)
    return row


def _day(note: Invoice, bill: Invoice, at: datetime) -> date:
    """Today, but not before either paper was issued."""
    days = [local_day(at, bill.business.zone), note.issued_on, bill.issued_on]
    return max(day for day in days if day is not None)


def _refuse_strangers(note: Invoice, bill: Invoice) -> None:
    if not note.is_credit_note or bill.is_credit_note or not (note.is_issued and bill.is_issued):
        raise CannotSetOff("Only an issued credit note is set off, against an issued invoice.")
    if note.currency != bill.currency:
        raise CannotSetOff(f"{note.number} is in {note.currency}, {bill.number} in {bill.currency}.")
    if note.farm_id != bill.farm_id and (note.payer_id is None or note.payer_id != bill.payer_id):
        raise CannotSetOff(f"{note.number} and {bill.number} are not of one farm or payer.")
