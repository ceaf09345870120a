"""What stands on a reminder of an overdue invoice. All figures are handed in ready, at the currency's decimals."""

from dataclasses import dataclass, field
from datetime import date, datetime
from decimal import Decimal

from invoicing.documents.invoice_content import Party, Payment


@dataclass(frozen=True)
class InterestSpan:
    """Days `first` to `last` (both counted, `days` of them) on `base` at `percent` a year; `interest` may be exact."""

    first: date
    last: date
    days: int
    base: Decimal
    percent: Decimal
    interest: Decimal


@dataclass(frozen=True)
class InterestClaim:
    """Interest up to the day of the reminder. `formula` says how it is reckoned and `source` where that is laid down,
    both in words handed in; `total` is the sum of the spans, rounded once."""

    spans: tuple[InterestSpan, ...]
    total: Decimal
    formula: str
    source: str = ""


@dataclass(frozen=True)
class ReminderContent:
    """One step of reminding of one invoice, on `day`. `open_amount` = gross - settled.

    total = open_amount + interest + fixed_sum. `step` counts from 1; from 3 on the words stay the firmest.
    `fixed_sum_source` says in words where the fixed sum is laid down. `ask` is whom to ring, such as a name.
    """

    step: int
    day: date
    made_at: datetime
    business: Party
    party: Party
    farm_name: str
    number: str
    issued_on: date
    due_on: date
    gross: Decimal
    settled: Decimal
    open_amount: Decimal
    total: Decimal
    currency: str
    digits: int
    interest: InterestClaim | None = None
    fixed_sum: Decimal = Decimal(0)
    fixed_sum_source: str = ""
    payment: Payment = field(default_factory=Payment)
    ask: str = ""
    note: str = ""
    logo: bytes | None = None
    tax_name: str = "VAT"
