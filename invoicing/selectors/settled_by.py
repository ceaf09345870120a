"""What was set against one invoice, or what one credit note was used for."""

from django.db.models import Q

from invoicing.models import Allocation, Invoice


def settled_by(paper: Invoice) -> list[Allocation]:
    """By day, undone ones included."""
    rows = Allocation.objects.within(paper.scope).filter(Q(invoice=paper) | Q(credit_note=paper))
    rows = rows.select_related("invoice", "payment", "credit_note", "noted_by")
    return list(rows.defer("invoice__seller", "invoice__buyer", "credit_note__seller", "credit_note__buyer"))
