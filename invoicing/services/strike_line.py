"""A line is struck off a draft: its work is left unbilled, and why."""

from django.db import transaction

from invoicing.models import BilledWork, Invoice, InvoiceLine
from invoicing.services.open_draft import ChangeRefused, Hand, keep_edit, open_draft
from invoicing.services.total_draft import total_draft


@transaction.atomic
def strike_line(*, line: InvoiceLine, hand: Hand) -> Invoice:
    """The line goes; its work stays held by the draft without a line, so it is not proposed again.

    The farm does not read of it on the paper, as it would of a line less 100 percent. ChangeRefused for the last line.
    """
    draft = open_draft(invoice=line.invoice, hand=hand)
    row = line.locked()
    if not InvoiceLine.objects.within(draft.scope).filter(invoice=draft).exclude(pk=row.pk).exists():
        raise ChangeRefused(
            "This is the only line: discard the draft, and leave the visit unbilled if need be."
        )
    because = hand.reason.strip()[:200]
    claims = BilledWork.objects.within(draft.scope).filter(line=row)
    claims.update(line=None, not_billed_because=because)
    keep_edit(invoice=draft, hand=hand, what=f"“{row.description}” struck off")
    row.delete()
    return total_draft(invoice=draft)
