"""The visits of the last weeks are billed, by the same services as always; the newest are left as drafts."""

from datetime import timedelta

from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from visits.domain.visit_states import VisitState
from visits.models import Visit

# Each invoice is drawn as a PDF, so the whole history would take minutes.
BILLED, LEFT_AS_DRAFTS = 24, 5


def bill_last_visits(crew: Crew) -> int:
    """How many invoices were issued, oldest visit first so that numbers follow the days."""
    rows = Visit.objects.within(Scope(crew.business.pk)).in_state(VisitState.FINISHED)
    rows = rows.select_related("business", "farm__payer").order_by("-finished_at")
    issued = 0
    for place, visit in reversed(list(enumerate(rows[:BILLED]))):
        evening = (visit.finished_at or visit.changed_at) + timedelta(hours=2)
        draft = draft_invoice(visit=visit, at=evening)
        if draft is not None and place >= LEFT_AS_DRAFTS:
            issue_invoice(invoice=draft, at=evening, by=crew.people["office"])
            issued += 1
    return issued
