"""What speaks for and against a booking being the payment of some open invoices; the weights are in `matching`."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import ROUND_DOWN, Decimal

from invoicing.domain.bank_account import without_blanks
from invoicing.domain.match_facts import Booking, OpenBill, OpenBook
from invoicing.domain.match_words import digit_runs, has_number, has_tail, name_words, references_in

REFERENCE, NUMBER, TAIL = Decimal("0.99"), Decimal("0.90"), Decimal("0.70")
AMOUNT, SUM_OF_ALL, SUM_OF_SOME = Decimal("0.60"), Decimal("0.60"), Decimal("0.45")
ACCOUNT, NAME = Decimal("0.75"), Decimal("0.50")
NOT_ALL_BY_REFERENCE, NOT_ALL = Decimal("0.97"), Decimal("0.80")
OTHER_IS_EXACT, OTHER_IS_NAMED = Decimal("0.70"), Decimal("0.70")
OTHER_PAYER, TOO_EARLY, TWIN = Decimal("0.80"), Decimal("0.50"), Decimal("0.50")
WITH_CHARGES = Decimal("0.90")
_NAMED = {REFERENCE: "Payment reference", NUMBER: "Invoice number", TAIL: "Invoice number without its prefix"}


@dataclass
class Evidence:
    """Weights with their reasons, factors with theirs; `confidence` is 1 - product(1 - weight), times the factors."""

    weights: list[Decimal] = field(default_factory=list)
    reasons: list[str] = field(default_factory=list)
    factors: list[Decimal] = field(default_factory=list)
    against: list[str] = field(default_factory=list)

    def speaks_for(self, weight: Decimal, reason: str) -> None:
        self.weights.append(weight)
        self.reasons.append(reason)

    def speaks_against(self, factor: Decimal, reason: str) -> None:
        self.factors.append(factor)
        self.against.append(reason)

    @property
    def confidence(self) -> Decimal:
        """Two decimals, rounded down."""
        missed = Decimal(1)
        for weight in self.weights:
            missed *= 1 - weight
        found = 1 - missed
        for factor in self.factors:
            found *= factor
        return found.quantize(Decimal("0.01"), rounding=ROUND_DOWN)


def named_bills(booking: Booking, book: OpenBook) -> dict[int, Decimal]:
    """Open invoices that the booking names, with the weight of how it does."""
    told = f"{booking.reference} {booking.text}"
    named = {book.by_reference[found].key: REFERENCE for found in references_in(told, book.by_reference)}
    near = {bill.key: bill for run in digit_runs(told) for bill in book.by_digits.get(run, ())}
    for bill in near.values():
        if has_number(told, bill.number):
            named.setdefault(bill.key, NUMBER)
    tails = [bill.key for bill in near.values() if has_tail(told, bill.number)]
    return named or dict.fromkeys(tails, TAIL)


def groups_by_account(booking: Booking, book: OpenBook) -> frozenset[str]:
    account = without_blanks(booking.party_account)
    return book.accounts.get(account, frozenset()) if account else frozenset()


def groups_by_name(booking: Booking, book: OpenBook) -> frozenset[str]:
    """Groups with a name whose words all stand in the party's name, one of them with four letters at least."""
    words = name_words(booking.party_name)
    found = {
        group
        for word in words
        if len(word) >= 4
        for group, whole in book.by_word.get(word, ())
        if whole <= words
    }
    return frozenset(found)


@dataclass(frozen=True)
class Hints:
    """What the booking says of itself, told once for all proposals."""

    named: Mapping[int, Decimal]
    by_account: frozenset[str]
    by_name: frozenset[str]

    @property
    def groups(self) -> frozenset[str]:
        return self.by_account | self.by_name


def weigh_naming(evidence: Evidence, bills: Sequence[OpenBill], hints: Hints) -> None:
    weights = [hints.named[bill.key] for bill in bills if bill.key in hints.named]
    if not weights:
        if hints.named:
            evidence.speaks_against(OTHER_IS_NAMED, "another invoice is named")
        return
    if len(weights) == len(bills):
        evidence.speaks_for(min(weights), _NAMED[min(weights)])
    if len(weights) < len(hints.named):
        evidence.speaks_against(OTHER_IS_NAMED, "more invoices are named")


def weigh_amount(
    evidence: Evidence, bills: Sequence[OpenBill], booking: Booking, book: OpenBook, rivals: int
) -> None:
    """`rivals`: how many proposals explain the amount in the same way, this one included."""
    whole = sum((bill.open_amount for bill in bills), Decimal(0))
    exact = whole == booking.amount
    if exact or (booking.charges and whole == booking.amount + booking.charges):
        weight, reason = _amount_weight(bills, book)
        evidence.speaks_for(weight / max(rivals, 1), reason)
        if not exact:
            evidence.speaks_against(WITH_CHARGES, "only with the bank's charges")
        return
    is_part = booking.amount < whole
    by_reference = REFERENCE in evidence.weights
    factor = NOT_ALL_BY_REFERENCE if by_reference else NOT_ALL
    evidence.speaks_against(factor, "less than is open" if is_part else "more than is open")
    siblings = book.by_group[bills[0].group]
    if any(bill.open_amount == booking.amount for bill in siblings if bill not in bills):
        evidence.speaks_against(OTHER_IS_EXACT, "another invoice of this payer has this amount")


def _amount_weight(bills: Sequence[OpenBill], book: OpenBook) -> tuple[Decimal, str]:
    if len(bills) == 1:
        return AMOUNT, "Amount is what is open"
    if len(bills) == len(book.by_group[bills[0].group]):
        return SUM_OF_ALL, "Amount is all that is open"
    return SUM_OF_SOME, f"Amount is the sum of {len(bills)} invoices"


def weigh_person(evidence: Evidence, group: str, hints: Hints) -> None:
    for groups, weight, reason in (
        (hints.by_account, ACCOUNT, "Account has paid before"),
        (hints.by_name, NAME, "Name"),
    ):
        if group in groups:
            evidence.speaks_for(weight / len(groups), reason)
    if hints.groups and group not in hints.groups:
        evidence.speaks_against(OTHER_PAYER, "account or name is another payer's")


def weigh_day(evidence: Evidence, bills: Iterable[OpenBill], booking: Booking) -> None:
    if any(booking.day < bill.issued_on for bill in bills):
        evidence.speaks_against(TOO_EARLY, "booked before the invoice")
    if booking.has_twin:
        evidence.speaks_against(TWIN, "may have come in another file already")
