"""What of an invoice or a credit note is settled, told anew from what was set against it."""

from datetime import datetime
from decimal import Decimal

from django.db import transaction
from django.db.models import Max, Q, Sum

from invoicing.domain.money_words import in_words
from invoicing.models import Allocation, Invoice
from invoicing.services.tell_money_news import tell_money_news
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.webhook_events import WebhookEvent


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
    was_open, (row.settled, newest) = row.is_open, _settled(row)
    if row.settled > max(row.payable, Decimal(0)):
        raise SettledTooMuch(f"Of {row.number} only {in_words(row.payable, row.currency)} can be settled.")
    row.is_open = row.is_issued and row.settled < row.payable
    row.save(update_fields=["settled", "is_open"])
    if was_open and not row.is_open and newest and not row.is_credit_note:
        once = f"settled {row.pk} {newest.timestamp():.6f}"
        tell_money_news(invoice=row, event=WebhookEvent.INVOICE_PAID, at=newest, once=once)
    return row


def _settled(row: Invoice) -> tuple[Decimal, datetime | None]:
    """How much, and when the newest part of it was noted."""
    against = Q(invoice=row)
    if row.is_credit_note:
        against |= Q(credit_note=row)
    rows = Allocation.objects.within(row.scope).standing().filter(against)
    found = rows.aggregate(sum=Sum("amount"), newest=Max("noted_at"))
    return found["sum"] or Decimal(0), found["newest"]
