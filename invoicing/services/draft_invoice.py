"""A finished visit becomes the draft of an invoice, its own or the one of the farm's month."""

from datetime import datetime

from django.db import transaction
from django.db.models import Exists, OuterRef

from farms.models import Farm
from invoicing.domain.billing_rhythm import BillingRhythm
from invoicing.models import BilledWork, Invoice, LateWork
from invoicing.selectors.draft_work import claims_on
from invoicing.selectors.farm_terms import farm_terms
from invoicing.services.draft_month import draft_month
from invoicing.services.leave_unbilled import hold_unbilled
from invoicing.services.lock_draft import lock_draft
from invoicing.services.make_draft import AtHand, PriceMissing, make_draft
from invoicing.services.note_late_work import note_late_work
from invoicing.services.total_draft import LessThanNothing
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from visits.domain.visit_states import VisitState
from visits.models import Visit

NOT_CHARGED = "Nothing of it is charged for at the prices of its day."


class VisitNotFinished(RuleBroken):
    """Only finished work is billed."""

    code = "visit_not_finished"


@transaction.atomic
def draft_invoice(*, visit: Visit, at: datetime) -> Invoice | None:
    """The draft that bills a finished visit at the prices of its day; a draft made before is made anew.

    None when nothing was done that is charged (such work is held unbilled, so that nobody is asked for it again); a
    draft made before then falls away. Work that an issued invoice bills,
    or that was left unbilled, is not drafted again: what has changed since is noted as late work for the office to see
    (`draft_late_work` bills it), and the issued invoice is returned. PriceMissing where there is no draft yet; one that
    is there stays, and the work it lacks is late.
    """
    farm = _locked_farm(visit)
    row = visit.locked()
    row.farm, row.business = farm, farm.business  # because: it is one business, read once
    if row.visit_state is not VisitState.FINISHED or row.finished_at is None:
        raise VisitNotFinished("Finish the visit first: only finished work is billed.")
    claims = claims_on(row.scope, [row])
    bills = _bills_of(row)
    draft = _draft_of(bills, claims)
    if draft is None and claims:
        claims = claims_on(row.scope, [row])  # because: it may have been issued while its lock was waited for
    is_billed = any(claim.invoice is None or claim.invoice.is_issued for claim in claims)
    if draft is not None:
        result, is_whole = _drafted_anew(farm, row, draft, at)
        is_billed |= not is_whole
    elif claims or (bills and _billed_before_claims(row)):
        result = _billed(claims) or _billed_before_claims(row)
    elif (terms := farm_terms(farm)).rhythm == BillingRhythm.MONTH.value:
        result = draft_month(farm=farm, month=local_day(row.finished_at, row.business.zone), at=at)
    else:
        result = make_draft(farm=farm, visit=row, draft=None, at=at, at_hand=AtHand(terms, claims))
    if result is None and draft is None and not claims:
        hold_unbilled(visit=row, because=NOT_CHARGED, at=at)
    if is_billed or LateWork.objects.within(row.scope).filter(visit=row).exists():
        note_late_work(visit=row, at=at)
    return result


def _locked_farm(visit: Visit) -> Farm:
    """As `visit.farm.locked()`, but read once, and the business with it."""
    return Farm.objects.within(visit.scope).select_related("business").locked().get(pk=visit.farm_id)


def _drafted_anew(farm: Farm, visit: Visit, draft: Invoice, at: datetime) -> tuple[Invoice | None, bool]:
    """The draft made anew. Where a price is missing, or less than nothing would be left, it stays as it was (False):
    what it lacks is then late work.
    """
    try:
        with transaction.atomic():
            if draft.visit_id is None:
                return draft_month(farm=farm, month=draft.period_from or draft.tax_point, at=at), True
            return make_draft(farm=farm, visit=visit, draft=draft, at=at), True
    except (PriceMissing, LessThanNothing):
        return draft, False


def _billed_before_claims(visit: Visit) -> Invoice | None:
    """The invoice of the first release that bills the visit: its lines hold no work."""
    rows = Invoice.objects.within(visit.scope).bills().issued().filter(visit=visit)
    claimed = BilledWork.objects.within(visit.scope).filter(invoice=OuterRef("pk"))
    return rows.filter(~Exists(claimed)).first()


def _bills_of(visit: Visit) -> list[Invoice]:
    """The visit's own bills, drafts too: of each no more than how it stands."""
    return list(Invoice.objects.within(visit.scope).bills().filter(visit=visit).only("state"))


def _draft_of(bills: list[Invoice], claims: list[BilledWork]) -> Invoice | None:
    """The draft that bills the visit, locked; None where there is none, or it was issued just now."""
    own = next((bill for bill in bills if not bill.is_issued), None)
    found = own or next((row.invoice for row in claims if row.invoice and not row.invoice.is_issued), None)
    return lock_draft(invoice=found) if found is not None else None


def _billed(claims: list[BilledWork]) -> Invoice | None:
    issued = [row.invoice for row in claims if row.invoice is not None and row.invoice.is_issued]
    return max(issued, key=lambda invoice: invoice.pk) if issued else None
