"""A draft is thrown away; its work is to be billed again."""

from datetime import datetime

from django.db import transaction

from invoicing.models import BilledWork, Invoice
from invoicing.services.lock_draft import locked_draft
from invoicing.services.note_late_work import note_late_work
from visits.models import Visit


@transaction.atomic
def discard_draft(*, invoice: Invoice, at: datetime) -> None:
    """The draft goes with its lines and claims; no number was taken, so none is missing. NotADraft."""
    draft = locked_draft(invoice=invoice)
    claims = BilledWork.objects.within(draft.scope)
    keys = {*claims.filter(invoice=draft).values_list("visit_id", flat=True)}
    keys |= {*claims.filter(credit_line__invoice=draft).values_list("visit_id", flat=True)}
    draft.delete()
    visits = Visit.objects.within(draft.scope).filter(pk__in=keys)
    for visit in visits.select_related("business", "farm"):
        note_late_work(visit=visit, at=at)
