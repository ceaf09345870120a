"""What of an invoice or a credit note is settled, told anew from what was set against it."""

from decimal import Decimal

from django.db import transaction
from django.db.models import Q, Sum

from invoicing.domain.money_words import in_words
from invoicing.models import Allocation, Invoice
from trimops.kernel.errors import RuleBroken


class SettledTooMuch(RuleBroken):
    """More would be set against it than is to be paid."""

    code = "settled_too_much"


@transaction.atomic
def settle_invoice(*, invoice: Invoice) -> Invoice:
    """Recompute `settled` and `is_open` under the lock of the row. SettledTooMuch when it would be over-settled.

    An invoice is settled by all that stands against it; a credit note by what it was set off against, and by money
    paid back on it.
    """
    row = invoice.locked()
    row.settled = _settled(row)
    if row.settled > max(row.payable, Decimal(0)):
        raise SettledTooMuch(f"Of {row.number} only {in_words(row.payable, row.currency)} can be settled.")
    row.is_open = row.is_issued and row.settled < row.payable
    row.save(update_fields=["settled", "is_open"])
    return row


def _settled(row: Invoice) -> Decimal:
    against = Q(invoice=row)
    if row.is_credit_note:
        against |= Q(credit_note=row)
    rows = Allocation.objects.within(row.scope).standing().filter(against)
    return rows.aggregate(sum=Sum("amount"))["sum"] or Decimal(0)
