"""Money that came in is noted, and set against invoices."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from decimal import Decimal

from django.db import transaction

from farms.models import Farm
from invoicing.domain.minor_units import minor_digits
from invoicing.domain.settling import PaymentMethod
from invoicing.models import BankEntry, Payment
from invoicing.services.lock_period import refuse_locked
from invoicing.services.set_against import set_against
from trimops.accounts.models import User
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.money import round_money

MOST_YEARS = 30
"""Earlier is a slip, such as the year 26."""


class PaymentRefused(RuleBroken):
    """The payment cannot be noted as it is; the message says what to mend."""

    code = "payment_refused"


@dataclass(frozen=True)
class MoneyReceived:
    """What came in: above nought, at most the decimals of the currency. `shares`: invoice key -> amount.

    What is not shared out stays on the farm's account.
    """

    farm: Farm
    received_on: date
    amount: Decimal
    currency: str
    method: PaymentMethod
    shares: Mapping[int, Decimal] = field(default_factory=dict)
    reference: str = ""
    payer_name: str = ""
    note: str = ""
    bank_entry: BankEntry | None = None


@transaction.atomic
def note_payment(*, money: MoneyReceived, at: datetime, by: User) -> Payment:
    """Keep the payment and set it against the invoices it names.

    PaymentRefused for an amount or day that cannot be, CannotSettle for shares that do not fit, PeriodLocked for a day
    in a closed period.
    """
    farm = money.farm
    if money.amount <= 0 or money.amount != round_money(money.amount, minor_digits(money.currency)):
        raise PaymentRefused(f"{money.amount} {money.currency} is no amount that can have come in.")
    today = local_day(at, farm.business.zone)
    if money.received_on > today:
        raise PaymentRefused("The day on which the money came lies ahead.")
    if money.received_on.year < today.year - MOST_YEARS:
        raise PaymentRefused(f"Look at the year: the money cannot have come in {money.received_on.year}.")
    refuse_locked(scope=farm.scope, day=money.received_on)
    row = Payment(business_id=farm.business_id, farm=farm, received_on=money.received_on)
    row.amount, row.currency, row.method = money.amount, money.currency, money.method.value
    row.reference, row.payer_name, row.note = money.reference, money.payer_name, money.note
    row.bank_entry, row.noted_at, row.noted_by = money.bank_entry, at, by
    row.full_clean()
    row.save()
    if money.shares:
        set_against(payment=row, shares=money.shares, on=money.received_on, at=at, by=by)
    return row
