"""Which open invoices a bank booking pays, with a confidence that is stated and reasons that are named.

Each piece of evidence leaves a chance that it misleads; independent pieces are multiplied (noisy or):

    confidence = 1 - product of (1 - weight)

| evidence | weight | why so much |
|---|---|---|
| creditor reference (ISO 11649) of an open invoice | 0.99 | check digits; it is copied whole or not at all |
| invoice number in the text | 0.90 | unambiguous, but typed by hand |
| number without its prefix | 0.70 | may be a customer number or a year |
| amount is what is open, of this invoice alone | 0.60 | few invoices are open at the same amount |
| amount of several (k) invoices | 0.60 / k | one of k |
| amount is all that the payer owes, several invoices | 0.60 | rarely by chance |
| amount is the sum of some of them | 0.45 | sums meet by chance more often |
| account known from earlier payments | 0.75 | families share accounts |
| name is that of the farm or payer | 0.50 | names repeat |

and then it is taken down by a factor for what speaks against it:

| against | factor |
|---|---|
| amount is less or more than the invoice named by reference | 0.97 |
| amount is not what is open, else | 0.80 |
| another open invoice of the same payer has exactly this amount | 0.70 |
| account or name belongs to another payer | 0.80 |
| booked before the invoice was issued | 0.50 |
| the same booking may have come in another file | 0.50 |
| exact only with the bank's charges | 0.90 |
| other or more invoices are named than these | 0.70 |

When the second-best proposal (of other invoices) reaches 0.60, the best is taken down to 0.90: a person looks.
The figures are our own judgement (no source); the labelled test set, also ours, shows what they do. Nothing is booked
without a person: `SURE` only decides what is ticked beforehand.
"""

from collections import Counter
from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import combinations

from invoicing.domain.match_evidence import (
    Evidence,
    Hints,
    groups_by_account,
    groups_by_name,
    named_bills,
    weigh_amount,
    weigh_day,
    weigh_naming,
    weigh_person,
)
from invoicing.domain.match_facts import Booking, OpenBill, OpenBook, Proposal
from invoicing.domain.settling import oldest_first

SURE, TO_LOOK_AT, DOUBTED = Decimal("0.95"), Decimal("0.60"), Decimal("0.90")
MOST_SUMMED, MOST_TRIED, MOST_ALIKE = 4, 12, 5

Bills = tuple[OpenBill, ...]


def best_proposals(booking: Booking, book: OpenBook) -> list[Proposal]:
    """What the booking may pay, the most likely first, at most three, none below 0.60.

    Money that went out is not matched. The work is bounded: sums of at most four of a payer's twelve oldest invoices.
    """
    if booking.amount <= 0:
        return []
    hints = Hints(named_bills(booking, book), groups_by_account(booking, book), groups_by_name(booking, book))
    candidates = list(dict.fromkeys(_candidates(booking, book, hints)))
    alike = Counter(_way(bills, booking, hints) for bills in candidates)
    found = [_weighed(bills, booking, book, hints, alike) for bills in candidates]
    found = [proposal for proposal in found if proposal.confidence >= TO_LOOK_AT]
    found.sort(key=lambda proposal: (-proposal.confidence, _age(proposal, book)))
    if len(found) > 1 and found[0].confidence > DOUBTED:
        why = (*found[0].against, "other invoices fit as well")
        found[0] = Proposal(found[0].shares, found[0].farm, DOUBTED, found[0].reasons, why)
    return found[:3]


def _candidates(booking: Booking, book: OpenBook, hints: Hints) -> Iterator[Bills]:
    named = tuple(sorted((book.by_key[key] for key in hints.named), key=lambda bill: bill.age))
    if len({bill.group for bill in named}) == 1:
        yield named
    yield from ((bill,) for bill in named)
    for amount in {booking.amount, booking.amount + booking.charges}:
        exact = book.by_amount.get(amount, [])
        yield from ((bill,) for bill in exact if len(exact) <= MOST_ALIKE or bill.group in hints.groups)
    groups = dict.fromkeys([*sorted(hints.groups), *(bill.group for bill in named)])
    for group in groups:
        is_named = any(bill.group == group for bill in named)
        yield from _of_group(booking, book.by_group.get(group, []), is_named)


def _of_group(booking: Booking, bills: Sequence[OpenBill], is_named: bool) -> Iterator[Bills]:
    """Sums of one payer's invoices that come to the amount; when nothing fits or is named, the oldest."""
    sums = [tuple(bills)] if _sum(bills) == booking.amount else []
    oldest = bills[:MOST_TRIED]
    for size in range(2, MOST_SUMMED + 1):
        sums += [some for some in combinations(oldest, size) if _sum(some) == booking.amount]
    yield from (some for some in sums if some)
    is_exact = bool(sums) or any(bill.open_amount == booking.amount for bill in bills)
    if bills and not is_exact and not is_named:
        by_key = {bill.key: bill for bill in bills}
        yield tuple(by_key[key] for key in _shares(booking, bills))


def _way(bills: Bills, booking: Booking, hints: Hints) -> tuple[int, bool, bool]:
    """In which way they explain the amount: proposals alike in this share its weight."""
    is_near = not hints.groups or bills[0].group in hints.groups
    return min(len(bills), 2), _sum(bills) == booking.amount, is_near


def _weighed(
    bills: Bills, booking: Booking, book: OpenBook, hints: Hints, alike: Counter[tuple[int, bool, bool]]
) -> Proposal:
    evidence = Evidence()
    weigh_naming(evidence, bills, hints)
    is_named = all(bill.key in hints.named for bill in bills)
    weigh_amount(evidence, bills, booking, book, 1 if is_named else alike[_way(bills, booking, hints)])
    weigh_person(evidence, bills[0].group, hints)
    weigh_day(evidence, bills, booking)
    shares = tuple(_shares(booking, bills).items())
    told = tuple(evidence.reasons), tuple(evidence.against)
    return Proposal(shares, bills[0].farm, evidence.confidence, *told)


def _shares(booking: Booking, bills: Sequence[OpenBill]) -> dict[int, Decimal]:
    return oldest_first(booking.amount, (bill.item for bill in bills))


def _age(proposal: Proposal, book: OpenBook) -> list[object]:
    return [book.by_key[key].age for key, _ in proposal.shares]


def _sum(bills: Sequence[OpenBill]) -> Decimal:
    return sum((bill.open_amount for bill in bills), Decimal(0))
