"""A person says what a booking on the bank account pays."""

from collections.abc import Mapping
from datetime import datetime
from decimal import Decimal

from django.db import transaction

from farms.models import Farm
from invoicing.domain.settling import PaymentMethod
from invoicing.models import BankEntry, Invoice, Payment
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.pay_back import MoneyBack, pay_back
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken


class EntryIsDone(RuleBroken):
    """The booking was matched or set aside already, or it is money of the other direction."""

    code = "entry_is_done"


@transaction.atomic
def match_entry(
    *, entry: BankEntry, farm: Farm, shares: Mapping[int, Decimal], at: datetime, by: User
) -> Payment:
    """Note money that came in as the farm's payment, set against `shares` (key of an invoice -> amount).

    EntryIsDone on the second press of the button; CannotSettle when an invoice was paid meanwhile: then nothing of it
    is booked.
    """
    row = open_entry(entry)
    if row.amount < 0:
        raise EntryIsDone("This money went out: say what it paid back, or set it aside.")
    money = MoneyReceived(
        farm=farm,
        received_on=row.booked_on,
        amount=row.amount,
        currency=row.currency,
        method=PaymentMethod.BANK,
        shares=shares,
        reference=(row.reference or row.text)[:140],
        payer_name=row.party_name,
        bank_entry=row,
    )
    return note_payment(money=money, at=at, by=by)


@transaction.atomic
def match_entry_paid_back(*, entry: BankEntry, of: Payment | Invoice, at: datetime, by: User) -> Payment:
    """Note money that went out as the rest of a payment, or a credit note, paid back."""
    row = open_entry(entry)
    if row.amount > 0 or row.currency != of.currency:
        raise EntryIsDone("This money came in, or is in another currency: nothing was paid back by it.")
    money = MoneyBack(of, row.booked_on, -row.amount, PaymentMethod.BANK, row.text[:300], row)
    return pay_back(money=money, at=at, by=by)


def open_entry(entry: BankEntry) -> BankEntry:
    """The booking, locked. EntryIsDone when it was matched or set aside."""
    row = entry.locked()
    if row.set_aside_at is not None:
        raise EntryIsDone("This booking was set aside: bring it back first.")
    if Payment.objects.within(row.scope).standing().filter(bank_entry=row).exists():
        raise EntryIsDone("This booking is matched already.")
    return row
