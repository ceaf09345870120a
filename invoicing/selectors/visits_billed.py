"""Which visits an invoice is for."""

from django.db.models import Q

from invoicing.models import BilledWork, Invoice, InvoiceLine
from visits.models import Visit


def visits_billed(invoice: Invoice) -> list[Visit]:
    """Those of its lines and of the work it holds, in order of days. Three queries."""
    lines = InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice)
    claims = BilledWork.objects.within(invoice.scope).filter(invoice=invoice)
    keys = {*lines.values_list("visit_id", flat=True), *claims.values_list("visit_id", flat=True)}
    rows = Visit.objects.within(invoice.scope).filter(pk__in=keys - {None})
    return list(rows.select_related("farm__business", "business").order_by("finished_at", "pk"))


def bill_of_visit(visit: Visit) -> Invoice | None:
    """The newest invoice or draft that bills work of the visit; None where nothing does."""
    rows = Invoice.objects.within(visit.scope).bills()
    return rows.filter(Q(visit=visit) | Q(billed_work__visit=visit)).order_by("-pk").first()
