"""How an invoice is settled."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from trimops.kernel.money import round_money


class PaymentMethod(StrEnum):
    """How money came."""

    BANK = "bank"
    CASH = "cash"
    CARD = "card"
    CHEQUE = "cheque"
    OTHER = "other"

    @property
    def label(self) -> str:
        return _METHODS[self]


class SettledBy(StrEnum):
    """What was set against an invoice."""

    PAYMENT = "payment"
    CREDIT = "credit"
    WRITE_OFF = "write_off"

    @property
    def label(self) -> str:
        return _SETTLED[self]


_METHODS = {
    PaymentMethod.BANK: "Bank transfer",
    PaymentMethod.CASH: "Cash",
    PaymentMethod.CARD: "Card",
    PaymentMethod.CHEQUE: "Cheque",
    PaymentMethod.OTHER: "Otherwise",
}
_SETTLED = {
    SettledBy.PAYMENT: "Payment",
    SettledBy.CREDIT: "Credit note",
    SettledBy.WRITE_OFF: "Written off",
}


@dataclass(frozen=True)
class OpenItem:
    """One invoice that is still to be paid: its key, what is open of it, the days that say how old it is."""

    key: int
    open_amount: Decimal
    due_on: date | None
    issued_on: date

    @property
    def age(self) -> tuple[date, date, int]:
        """What sorts the oldest first."""
        return (self.due_on or self.issued_on, self.issued_on, self.key)


def oldest_first(amount: Decimal, items: Iterable[OpenItem]) -> dict[int, Decimal]:
    """`amount` set against the items, that due first first; what is left over stands against none of them."""
    shares: dict[int, Decimal] = {}
    left = amount
    for item in sorted(items, key=lambda item: item.age):
        share = min(left, item.open_amount)
        if share > 0:
            shares[item.key] = share
            left -= share
    return shares


def is_part_of(amount: Decimal, whole: Decimal, digits: int) -> bool:
    """Whether so much can be taken of `whole`: above nought, no more than there is, in the currency's decimals."""
    return 0 < amount <= whole and amount == round_money(amount, digits)


def faults_of_shares(
    amount: Decimal,
    shares: Mapping[int, Decimal],
    open_amounts: Mapping[int, Decimal],
    names: Mapping[int, str],
    digits: int = 2,
) -> list[str]:
    """What is wrong with setting `shares` of `amount` against invoices of which so much is open; [] when nothing is."""
    faults = []
    for key, share in shares.items():
        if share <= 0:
            faults.append(f"{names[key]}: an amount to set against it must be above nought.")
        elif share != round_money(share, digits):
            faults.append(f"{names[key]}: {share} has more decimals than the currency.")
        elif share > open_amounts[key]:
            faults.append(f"{names[key]}: only {open_amounts[key]} is open, not {share}.")
    if (total := sum(shares.values(), Decimal(0))) > amount:
        faults.append(f"{total} is set against invoices, but there is only {amount}.")
    return faults
