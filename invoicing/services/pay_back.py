"""Money goes back to a farm: the rest of a payment, or what a credit note is good for."""

from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal

from django.db import transaction

from invoicing.domain.minor_units import minor_digits
from invoicing.domain.money_words import in_words
from invoicing.domain.settling import PaymentMethod, SettledBy, is_part_of
from invoicing.models import Allocation, BankEntry, Invoice, Payment
from invoicing.selectors.payment_rest import payment_rest
from invoicing.services.lock_period import refuse_locked
from invoicing.services.settle_invoice import settle_invoice
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken


class CannotPayBack(RuleBroken):
    """So much is not there to be paid back."""

    code = "cannot_pay_back"


@dataclass(frozen=True)
class MoneyBack:
    """What went out, above nought, and what it gives back: a payment's rest or an issued credit note."""

    of: Payment | Invoice
    paid_on: date
    amount: Decimal
    method: PaymentMethod
    note: str = ""
    bank_entry: BankEntry | None = None


@transaction.atomic
def pay_back(*, money: MoneyBack, at: datetime, by: User) -> Payment:
    """Keep it as a payment below nought. CannotPayBack for more than is left, PeriodLocked for a closed day."""
    source = money.of.locked()
    if money.paid_on > local_day(at, source.business.zone):
        raise CannotPayBack("The day on which the money went lies ahead.")
    _refuse_too_much(source, money.amount)
    refuse_locked(scope=source.scope, day=money.paid_on)
    row = Payment(business_id=source.business_id, farm=source.farm, received_on=money.paid_on)
    row.amount, row.currency, row.method = -money.amount, source.currency, money.method.value
    row.note, row.bank_entry, row.noted_at, row.noted_by = money.note, money.bank_entry, at, by
    row.pays_back = source if isinstance(source, Payment) else None
    row.full_clean()
    row.save()
    if isinstance(source, Invoice):
        _settle_credit_note(source, row, at, by)
    return row


def _refuse_too_much(source: Payment | Invoice, amount: Decimal) -> None:
    if isinstance(source, Payment):
        left = payment_rest(source)
    else:
        left = source.open_amount if source.is_issued and source.is_credit_note else Decimal(0)
    if not is_part_of(amount, left, minor_digits(source.currency)):
        raise CannotPayBack(f"{in_words(left, source.currency)} is there to be paid back: that or less.")


def _settle_credit_note(note: Invoice, payment: Payment, at: datetime, by: User) -> None:
    row = Allocation(business_id=note.business_id, invoice=note, kind=SettledBy.PAYMENT.value)
    row.payment, row.amount, row.on = payment, -payment.amount, payment.received_on
    row.noted_at, row.noted_by = at, by
    row.full_clean()
    row.save()
    settle_invoice(invoice=note)
