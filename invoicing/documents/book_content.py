"""Lines of the books beside the sales journal. All amounts are rounded to the currency's minor unit."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from invoicing.domain.mileage_allowance import Allowed
from invoicing.domain.settling import PaymentMethod


@dataclass(frozen=True)
class PaidRow:
    """One payment (negative: paid back), what it was set against, and the part that was set against nothing yet."""

    payment_id: int
    on: date
    farm: str
    payer: str
    method: PaymentMethod
    reference: str
    currency: str
    amount: Decimal
    settled: tuple[tuple[str, Decimal], ...]
    left: Decimal


@dataclass(frozen=True)
class WriteOffRow:
    """One amount that will not be paid any more, and why."""

    on: date
    number: str
    party: str
    currency: str
    amount: Decimal
    reason: str


@dataclass(frozen=True)
class OpenRow:
    """An invoice not paid at the end of a day (a credit note not used: negative), and how many days late it was."""

    invoice_id: int
    number: str
    party: str
    farm: str
    issued_on: date
    due_on: date | None
    days_late: int
    currency: str
    total: Decimal
    still_open: Decimal


@dataclass(frozen=True)
class DriveRow:
    """One drive of the mileage log: `distance` in the log's unit, `reckoned` what stood there before it was mended."""

    journey_id: int
    on: date
    van: str
    from_words: str
    to_words: str
    purpose: str
    distance: Decimal
    source: str
    reckoned: Decimal | None
    mended_because: str
    is_by_hand: bool
    allowed: Allowed
