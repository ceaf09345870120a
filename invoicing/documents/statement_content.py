"""What stands on a statement of account. All figures are handed in ready, at the currency's decimals."""

from dataclasses import dataclass, field
from datetime import date, datetime
from decimal import Decimal

from invoicing.documents.invoice_content import Party, Payment


@dataclass(frozen=True)
class StatementLine:
    """One line of the account. `debit`: the farm owes more by it (invoice, money paid back); `credit`: less (payment,
    credit note, written off). `balance` is what is owed after it. `number`: of the paper, or words on the payment.
    """

    day: date
    what: str
    number: str
    debit: Decimal
    credit: Decimal
    balance: Decimal
    due_on: date | None = None


@dataclass(frozen=True)
class Ageing:
    """What is open by whole days past due; `unused` is money received, or credit, not yet set against an invoice."""

    not_yet_due: Decimal = Decimal(0)
    to_30: Decimal = Decimal(0)
    to_60: Decimal = Decimal(0)
    to_90: Decimal = Decimal(0)
    over_90: Decimal = Decimal(0)
    unused: Decimal = Decimal(0)


@dataclass(frozen=True)
class StatementContent:
    """One farm's account from `first` to `last`. A balance above nought is owed to the business, one below is to the
    farm's good. `ageing` (as of `last`) is left out by None. `party` is who pays; `farm_name` where the work was done.
    """

    business: Party
    party: Party
    farm_name: str
    first: date
    last: date
    made_at: datetime
    currency: str
    digits: int
    opening: Decimal
    lines: tuple[StatementLine, ...]
    closing: Decimal
    ageing: Ageing | None = None
    payment: Payment = field(default_factory=Payment)
    note: str = ""
    logo: bytes | None = None
    tax_name: str = "VAT"
