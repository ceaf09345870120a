"""Everything that is ready to be billed is drafted."""

from dataclasses import dataclass, field
from datetime import datetime

from django.db import transaction

from invoicing.models import Invoice
from invoicing.selectors.ready_to_bill import unbilled_visits
from invoicing.services.draft_invoice import draft_invoice
from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from visits.models import Visit

AT_ONCE = 100
"""Visits drafted by one press, so that the page answers."""


@dataclass
class DraftedAll:
    """Which drafts there are now, which visits are not charged for, and what stood in the way of others."""

    drafts: dict[int, Invoice] = field(default_factory=dict)
    free: list[Visit] = field(default_factory=list)
    refused: list[tuple[Visit, str]] = field(default_factory=list)


def draft_ready(*, business: Business, at: datetime) -> DraftedAll:
    """Draft the finished visits that nothing bills, the oldest first; one that is refused holds up no other."""
    rows = unbilled_visits(Scope(business.pk)).select_related("farm__business", "business")
    result = DraftedAll()
    for visit in rows.order_by("finished_at")[:AT_ONCE]:
        try:
            with transaction.atomic():
                draft = draft_invoice(visit=visit, at=at)
        except RuleBroken as refusal:
            result.refused.append((visit, refusal.message))
            continue
        if draft is None:
            result.free.append(visit)
        else:
            result.drafts[draft.pk] = draft
    return result
