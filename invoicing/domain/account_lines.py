"""A farm's account: what it owes goes up by invoices and money paid back, down by payments, credits and write-offs."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum


class AccountWhat(StrEnum):
    """What moves the account; the order is the order within a day."""

    INVOICE = "invoice"
    CREDIT_NOTE = "credit_note"
    PAYMENT = "payment"
    PAID_BACK = "paid_back"
    FROM_OTHER = "from_other"
    TO_OTHER = "to_other"
    WRITE_OFF = "write_off"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    AccountWhat.INVOICE: "Invoice",
    AccountWhat.CREDIT_NOTE: "Credit note",
    AccountWhat.PAYMENT: "Payment",
    AccountWhat.PAID_BACK: "Paid back",
    AccountWhat.FROM_OTHER: "From the payer's other farm",
    AccountWhat.TO_OTHER: "To the payer's other farm",
    AccountWhat.WRITE_OFF: "Written off",
}
_PLACES = {what: place for place, what in enumerate(AccountWhat)}


@dataclass(frozen=True)
class AccountMove:
    """One move. `amount` above nought: the farm owes more. `key`: of the invoice or payment it links to."""

    day: date
    what: AccountWhat
    amount: Decimal
    number: str
    key: int
    due_on: date | None = None
    more: str = ""


@dataclass(frozen=True)
class AccountLine:
    """A move with what is owed after it."""

    move: AccountMove
    balance: Decimal

    @property
    def debit(self) -> Decimal:
        return max(self.move.amount, Decimal(0))

    @property
    def credit(self) -> Decimal:
        return max(-self.move.amount, Decimal(0))


@dataclass(frozen=True)
class FarmAccount:
    """The account from `first` to `last`: `opening` is owed before the first day, `closing` after the last.

    Below nought: the money is to the farm's good.
    """

    first: date
    last: date
    currency: str
    opening: Decimal
    lines: tuple[AccountLine, ...]

    @property
    def closing(self) -> Decimal:
        return self.lines[-1].balance if self.lines else self.opening

    @property
    def debits(self) -> Decimal:
        return sum((line.debit for line in self.lines), Decimal(0))

    @property
    def credits(self) -> Decimal:
        return sum((line.credit for line in self.lines), Decimal(0))


def running_lines(opening: Decimal, moves: Iterable[AccountMove]) -> tuple[AccountLine, ...]:
    """The moves by day, each with what is owed after it."""
    lines, balance = [], opening
    for move in sorted(moves, key=lambda move: (move.day, _PLACES[move.what], move.key)):
        balance += move.amount
        lines.append(AccountLine(move, balance))
    return tuple(lines)
