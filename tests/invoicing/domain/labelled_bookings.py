"""200 invented bank bookings with what they truly pay, made from a seed with the mistakes people make.

The set is ours: names, habits and noise are invented, so it shows how the weights behave, not how a real bank does.
"""

import random
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from invoicing.domain.creditor_reference import creditor_reference
from invoicing.domain.match_facts import Booking, OpenBill, OpenBook

FIRST = ("Oak", "Elm", "Rush", "Gorse", "Bracken", "Fern", "Thistle", "Hazel", "Rowan", "Sorrel")
LAST = ("field", "combe", "dale", "thwaite", "mere")
START = date(2026, 1, 5)
FORMS = ("{n}", "Invoice {n}", "inv {t}", "{t} feet", "thanks {n}.", "No {s}", "{j}")


@dataclass(frozen=True)
class Labelled:
    booking: Booking
    truth: frozenset[int]
    """Keys of the invoices it pays; empty: none of them."""
    how: str


class Maker:
    """Two or three open invoices for each of fifty farms, many at the same round amounts."""

    def __init__(self, seed: int = 20261130) -> None:
        self.dice = random.Random(seed)
        self.names = {f"farm:{n}": f"{FIRST[n // 5]}{LAST[n % 5]} Farm" for n in range(50)}
        self.accounts = {group: f"GB{n:02d}FARM{n:014d}" for n, group in enumerate(self.names)}
        self.bills = [
            self._bill(n, group) for n, group in enumerate([*self.names] * 3) if self.dice.random() < 0.8
        ]
        known = {self.accounts[group]: frozenset([group]) for group in list(self.names)[:35]}
        shared = list(self.names)[33:35]
        known[self.accounts[shared[0]]] = frozenset(shared)  # because: families share an account
        names = {group: (name,) for group, name in self.names.items()}
        self.book = OpenBook(tuple(self.bills), names, known)

    def _bill(self, n: int, group: str) -> OpenBill:
        amount = Decimal(self.dice.choice((120, 180, 240, 300)))
        if self.dice.random() < 0.6:
            amount += Decimal(self.dice.randrange(10_000)) / 100
        number, day = f"INV-2026-{n + 1:04d}", START + timedelta(days=self.dice.randrange(50))
        due = day + timedelta(days=14)
        farm = int(group.split(":")[1])
        return OpenBill(n + 1, number, creditor_reference(number), group, farm, amount, day, due)

    def all(self, count: int = 200) -> list[Labelled]:
        ways = (
            *[self.by_reference] * 4,
            *[self.by_number] * 5,
            *[self.amount_only] * 4,
            *[self.whole_account] * 2,
            self.two_named,
            self.in_part,
            self.old_reference,
            self.mistyped,
            self.somebody_else,
            self.nothing_to_do_with_it,
        )
        return [ways[n % len(ways)](n + 1) for n in range(count)]

    def _of(
        self, key: int, bills: list[OpenBill], how: str, amount: Decimal | None = None, **said: str
    ) -> Labelled:
        group = bills[0].group
        day = max(bill.issued_on for bill in bills) + timedelta(days=self.dice.randrange(1, 40))
        total = sum((bill.open_amount for bill in bills), Decimal(0)) if amount is None else amount
        told = {"party_name": self._name(group), "party_account": self.accounts[group], **said}
        if self.dice.random() < 0.2:
            told["party_account"] = ""
        return Labelled(Booking(key, day, total, "GBP", **told), frozenset(bill.key for bill in bills), how)

    def _name(self, group: str) -> str:
        name = self.names[group]
        return self.dice.choice((name, name.upper(), f"{name} Partnership", "J and M Nobody", name[:6]))

    def _one(self) -> OpenBill:
        return self.dice.choice(self.bills)

    def _family(self, size: int) -> list[OpenBill]:
        while True:
            bills = self.book.by_group[self._one().group]
            if len(bills) >= size:
                return bills

    def _typed(self, bill: OpenBill) -> str:
        year, serial = bill.number.split("-")[1:]
        return self.dice.choice(FORMS).format(
            n=bill.number, t=f"{year}/{serial}", s=serial, j=bill.number.replace("-", "")
        )

    def by_reference(self, key: int) -> Labelled:
        bill = self._one()
        spaced = " ".join(bill.reference[n : n + 4] for n in range(0, len(bill.reference), 4))
        said = self.dice.choice(({"reference": bill.reference}, {"text": f"ref {spaced} ta"}))
        return self._of(key, [bill], "by reference", **said)

    def by_number(self, key: int) -> Labelled:
        bill = self._one()
        return self._of(key, [bill], "by number", text=self._typed(bill))

    def amount_only(self, key: int) -> Labelled:
        return self._of(key, [self._one()], "amount only", text="cow feet")

    def whole_account(self, key: int) -> Labelled:
        return self._of(key, self._family(2), "whole account", text="all of it")

    def two_named(self, key: int) -> Labelled:
        bills = self._family(2)[:2]
        return self._of(key, bills, "two named", text=" and ".join(bill.number for bill in bills))

    def in_part(self, key: int) -> Labelled:
        bill = self._one()
        half = (bill.open_amount / 2).quantize(Decimal(1))
        return self._of(key, [bill], "in part", half, text=self._typed(bill))

    def old_reference(self, key: int) -> Labelled:
        """The reference of an older invoice that is still open, typed once more for the newer one."""
        old, new, *_ = self._family(2)
        if old.open_amount == new.open_amount:
            return self.by_reference(key)
        return self._of(key, [new], "old reference", reference=old.reference)

    def mistyped(self, key: int) -> Labelled:
        """One digit of the number wrong; it may well be somebody else's."""
        bill = self._one()
        wrong = f"{(int(bill.number[-4:]) + self.dice.choice((1, 10, 100))) % 10_000:04d}"
        return self._of(key, [bill], "mistyped", text=f"{bill.number[:-4]}{wrong}")

    def somebody_else(self, key: int) -> Labelled:
        """A relative pays from an account that has paid for another farm."""
        bill = self._one()
        other = self.dice.choice(list(self.names)[:33])
        return self._of(key, [bill], "somebody else", party_account=self.accounts[other], text="for dad")

    def nothing_to_do_with_it(self, key: int) -> Labelled:
        amount = Decimal(self.dice.choice((120, 180, 15, 99)))
        day = START + timedelta(days=60)
        said = self.dice.choice(("rent", "2026", "0042", "refund 20260001"))
        return Labelled(
            Booking(key, day, amount, "GBP", "", said, "Co-op of Nowhere"), frozenset(), "nothing"
        )
