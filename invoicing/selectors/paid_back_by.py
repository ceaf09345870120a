"""What money that went out may have paid back."""

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from invoicing.models import BankEntry, Invoice
from invoicing.selectors.payment_rows import PaymentFilter, payment_rows, with_rests
from trimops.kernel.scope import Scope

MOST = 30


class BackChoice(StrEnum):
    PAYMENT = "payment"
    CREDIT_NOTE = "credit"


@dataclass(frozen=True)
class MayPayBack:
    """A payment with a rest, or an open credit note, of which at least the booking's amount is left."""

    value: str
    words: str
    left: Decimal


def what_it_may_pay_back(scope: Scope, entry: BankEntry) -> list[MayPayBack]:
    """Those of the same currency with enough left, at most thirty of each kind."""
    amount = -entry.amount
    payments = payment_rows(scope, PaymentFilter.WITH_REST, at_least=amount).filter(currency=entry.currency)
    found = [
        MayPayBack(
            f"{BackChoice.PAYMENT}-{row.payment.pk}",
            f"{row.payment.farm.name}: payment of {row.payment.received_on:%-d %b %Y}",
            row.rest,
        )
        for row in with_rests(scope, payments[:MOST])
    ]
    notes = (
        Invoice.objects.within(scope).issued().credit_notes().filter(is_open=True, currency=entry.currency)
    )
    for note in notes.select_related("farm").defer("seller", "buyer")[:MOST]:
        if note.open_amount >= amount:
            words = f"{note.farm.name}: credit note {note.number}"
            found.append(MayPayBack(f"{BackChoice.CREDIT_NOTE}-{note.pk}", words, note.open_amount))
    return found
