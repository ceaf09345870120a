"""Lines changed by hand that the work no longer bears out."""

from invoicing.domain.work_difference import work_difference
from invoicing.models import BilledWork, Invoice
from invoicing.selectors.draft_work import as_claim
from invoicing.selectors.visit_work import visit_works
from visits.models import Visit


def lost_claims(invoice: Invoice) -> frozenset[int]:
    """Keys of claims of the draft's lines by hand whose work is gone. No query more where there is no such line."""
    rows = BilledWork.objects.within(invoice.scope).filter(line__invoice=invoice, line__is_by_hand=True)
    claims = [row for row in rows if not row.key.startswith("visit/")]
    if not claims:
        return frozenset()
    visits = Visit.objects.within(invoice.scope).filter(pk__in={row.visit_id for row in claims})
    works = visit_works(invoice.scope, list(visits.select_related("business")))
    pieces = [piece for work in works for piece in work.pieces]
    found = work_difference(pieces, [as_claim(row) for row in claims])
    return frozenset(claim.claim_id for claim in found.gone)
