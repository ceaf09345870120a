"""How far an invoice is paid, in one word."""

from datetime import date
from decimal import Decimal
from enum import StrEnum


class PaidState(StrEnum):
    """`PART` and `OPEN` are not due yet; `OVERDUE` may be paid in part."""

    PAID = "paid"
    PART = "part"
    OPEN = "open"
    OVERDUE = "overdue"

    @property
    def label(self) -> str:
        return {"paid": "Paid", "part": "Paid in part", "open": "To pay", "overdue": "Overdue"}[self.value]

    @property
    def mark(self) -> str:
        """The mark of meaning it wears on a page."""
        return {"paid": "done", "part": "due", "open": "due", "overdue": "urgent"}[self.value]


def paid_state(payable: Decimal, settled: Decimal, due_on: date | None, today: date) -> PaidState:
    """Of what is to be paid and what was settled of it (paid, set off, written off); overdue from the day after."""
    if settled >= payable:
        return PaidState.PAID
    if due_on is not None and due_on < today:
        return PaidState.OVERDUE
    return PaidState.PART if settled > 0 else PaidState.OPEN
