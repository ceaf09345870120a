"""Money received is set against invoices."""

from collections.abc import Mapping
from datetime import date, datetime
from decimal import Decimal

from django.db import transaction

from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import SettledBy, faults_of_shares
from invoicing.models import Allocation, Invoice, Payment
from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.lock_invoices import lock_invoices
from invoicing.services.lock_period import refuse_locked
from invoicing.services.settle_invoice import settle_invoice
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money


class CannotSettle(RuleBroken):
    """The amounts cannot be set against these invoices; the message names each fault."""

    code = "cannot_settle"


@transaction.atomic
def set_against(
    *, payment: Payment, shares: Mapping[int, Decimal], on: date, at: datetime, by: User
) -> list[Allocation]:
    """Set parts of a payment's rest against invoices: key of the invoice -> amount.

    Locks the invoices by their keys and then the payment. CannotSettle when an invoice is not issued, is of another
    farm and payer or currency, when less of it is open, or when the payment has not so much left. `on` is the day, but
    never before the invoice was issued.
    """
    invoices = lock_invoices(scope=payment.scope, keys=shares)
    row = payment.locked()
    _refuse_faults(row, invoices, shares)
    made = [_allocate(row, invoices[key], shares[key], on, at, by) for key in sorted(shares)]
    for invoice in invoices.values():
        settle_invoice(invoice=invoice)
    return made


def _allocate(
    payment: Payment, invoice: Invoice, amount: Decimal, on: date, at: datetime, by: User
) -> Allocation:
    day = max(on, invoice.issued_on or on)
    refuse_locked(scope=payment.scope, day=day)
    row = Allocation(business_id=payment.business_id, invoice=invoice, kind=SettledBy.PAYMENT.value)
    row.payment, row.amount, row.on, row.noted_at, row.noted_by = payment, amount, day, at, by
    row.full_clean()
    row.save()
    return row


def _refuse_faults(payment: Payment, invoices: Mapping[int, Invoice], shares: Mapping[int, Decimal]) -> None:
    if set(shares) - set(invoices):
        raise CannotSettle("One of these invoices is not there.")
    faults = [words for row in invoices.values() if (words := _stranger(payment, row))]
    digits = minor_digits(payment.currency)
    if not faults:
        open_amounts = {key: round_money(row.open_amount, digits) for key, row in invoices.items()}
        names = {key: row.number for key, row in invoices.items()}
        rest = round_money(payment_rest(payment), digits)
        faults = faults_of_shares(rest, shares, open_amounts, names, digits)
    if faults:
        raise CannotSettle(" ".join(faults))


def _stranger(payment: Payment, invoice: Invoice) -> str:
    """Why nothing of the payment can be set against that invoice; empty when it can."""
    if payment.taken_back_at is not None:
        return "The payment was taken back."
    if not invoice.is_issued or invoice.is_credit_note:
        return f"{invoice.number or 'A draft'} is no issued invoice."
    if invoice.currency != payment.currency:
        return f"{invoice.number} is in {invoice.currency}, the money in {payment.currency}."
    payer_id = payment.farm.payer_id
    if invoice.farm_id != payment.farm_id and (payer_id is None or payer_id != invoice.payer_id):
        return f"{invoice.number} is of another farm, and not of the same payer."
    return ""
