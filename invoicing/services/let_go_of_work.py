"""Issuing a credit note lets go of the work it credits."""

from django.db import transaction

from invoicing.models import BilledWork, Invoice
from invoicing.services.note_late_work import note_late_work
from visits.models import Visit


@transaction.atomic
def let_go_of_work(*, credit_note: Invoice) -> int:
    """How many pieces of work nothing bills any more. Called while the note is issued, in that transaction."""
    held = BilledWork.objects.within(credit_note.scope).filter(holds=True)
    marked = held.filter(credit_line__invoice=credit_note)
    visits = Visit.objects.within(credit_note.scope).filter(
        pk__in=list(marked.values_list("visit_id", flat=True))
    )
    count = marked.update(holds=False)
    for visit in visits.select_related("business", "farm"):
        note_late_work(visit=visit, at=credit_note.issued_at or credit_note.drafted_at)
    return count
