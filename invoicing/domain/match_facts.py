"""What is known when a bank booking is matched: the booking, the open invoices, who paid from where before."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from functools import cached_property
from typing import TypeVar

from invoicing.domain.match_words import digit_keys, name_words
from invoicing.domain.settling import OpenItem

K = TypeVar("K")
V = TypeVar("V")


@dataclass(frozen=True)
class Booking:
    """Money that came in. `has_twin`: the same booking may have come in a file of another form."""

    key: int
    day: date
    amount: Decimal
    currency: str
    reference: str = ""
    text: str = ""
    party_name: str = ""
    party_account: str = ""
    charges: Decimal = Decimal(0)
    has_twin: bool = False


@dataclass(frozen=True)
class OpenBill:
    """An open invoice. `group` names who pays: one payer with all his farms, or one farm."""

    key: int
    number: str
    reference: str
    group: str
    farm: int
    open_amount: Decimal
    issued_on: date
    due_on: date | None = None

    @property
    def item(self) -> OpenItem:
        return OpenItem(self.key, self.open_amount, self.due_on, self.issued_on)

    @property
    def age(self) -> tuple[date, date, int]:
        """What sorts the oldest first."""
        return self.item.age


@dataclass(frozen=True)
class Proposal:
    """Invoices (key, amount) that a booking may pay, how sure that is (0 to 1), what speaks for and against it."""

    shares: tuple[tuple[int, Decimal], ...]
    farm: int
    confidence: Decimal
    reasons: tuple[str, ...]
    against: tuple[str, ...] = ()

    @property
    def percent(self) -> int:
        """The confidence in whole percent, rounded down."""
        return int(self.confidence * 100)


@dataclass(frozen=True)
class OpenBook:
    """All open invoices of one currency, names by group, and groups by the account that paid for them before."""

    bills: tuple[OpenBill, ...]
    names: Mapping[str, tuple[str, ...]]
    accounts: Mapping[str, frozenset[str]]

    @cached_property
    def by_key(self) -> dict[int, OpenBill]:
        return {bill.key: bill for bill in self.bills}

    @cached_property
    def by_reference(self) -> dict[str, OpenBill]:
        return {bill.reference: bill for bill in self.bills if bill.reference}

    @cached_property
    def by_amount(self) -> dict[Decimal, list[OpenBill]]:
        return _grouped((bill.open_amount, bill) for bill in self.bills)

    @cached_property
    def by_group(self) -> dict[str, list[OpenBill]]:
        return _grouped((bill.group, bill) for bill in sorted(self.bills, key=lambda bill: bill.age))

    @cached_property
    def by_digits(self) -> dict[str, list[OpenBill]]:
        return _grouped((digits, bill) for bill in self.bills for digits in digit_keys(bill.number))

    @cached_property
    def by_word(self) -> dict[str, list[tuple[str, frozenset[str]]]]:
        """Word of a name -> groups that have it, each with all words of that name."""
        pairs = [(group, name_words(name)) for group, names in self.names.items() for name in names]
        return _grouped((word, (group, words)) for group, words in pairs for word in words)


def _grouped(pairs: Iterable[tuple[K, V]]) -> dict[K, list[V]]:
    found: dict[K, list[V]] = defaultdict(list)
    for key, value in pairs:
        found[key].append(value)
    return found
