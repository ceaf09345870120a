"""What is ready to be billed: visits without a draft, months that are over, work that changed after its bill."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, time

from django.db.models import Count, Exists, OuterRef, Q

from invoicing.domain.billing_rhythm import BillingRhythm
from invoicing.models import BilledWork, FarmTerms, Invoice, LateWork
from invoicing.models.invoice import InvoiceQuerySet
from invoicing.selectors.money_rules import money_rules
from trimops.kernel.clock import at_local
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet
from visits.domain.visit_states import VisitState
from visits.models import Trim, Visit

MOST = 200
"""Rows shown at once of each kind; the counts are of all."""


@dataclass(frozen=True)
class ReadyToBill:
    """Each list at most MOST long, oldest first. `running` are month drafts whose month is not over."""

    visits: Sequence[Visit]
    visit_count: int
    months: Sequence[Invoice]
    running: Sequence[Invoice]
    late: Sequence[LateWork]
    left: Sequence[Visit]

    @property
    def is_empty(self) -> bool:
        return not (self.visits or self.months or self.late)


def ready_to_bill(scope: Scope, today: date) -> ReadyToBill:
    """In eight queries, however many visits there are."""
    visits = unbilled_visits(scope)
    by_month = FarmTerms.objects.within(scope).filter(farm=OuterRef("farm"), rhythm=BillingRhythm.MONTH.value)
    rows = visits.select_related("farm").annotate(
        cows=Count("trims", filter=Q(trims__taken_back_at__isnull=True)), is_by_month=Exists(by_month)
    )
    months = month_drafts(scope).select_related("farm", "payer").order_by("period_from", "farm__name")
    late = LateWork.objects.within(scope).select_related("visit__farm").order_by("found_at")
    return ReadyToBill(
        list(rows.order_by("finished_at")[:MOST]),
        visits.count(),
        list(months.filter(period_until__lt=today)[:MOST]),
        list(months.filter(period_until__gte=today)[:MOST]),
        list(late[:MOST]),
        list(_left(scope)),
    )


def month_drafts(scope: Scope) -> InvoiceQuerySet:
    """Drafts that bill a farm's month."""
    drafts: InvoiceQuerySet = Invoice.objects.within(scope).bills().drafts()
    return drafts.filter(period_until__isnull=False, visit__isnull=True)


def unbilled_visits(scope: Scope) -> TenantQuerySet[Visit]:
    """Finished visits with a cow put down, of whose work nothing is held and that have no draft."""
    held = BilledWork.objects.within(scope).filter(visit=OuterRef("pk"), holds=True)
    cows = Trim.objects.within(scope).filter(visit=OuterRef("pk"))
    bills = Invoice.objects.within(scope).bills().filter(visit=OuterRef("pk"))
    claimed = BilledWork.objects.within(scope).filter(invoice=OuterRef("pk"))
    # Invoices of the first release hold no work: their visits are billed all the same.
    rows = _since_the_start(scope, Visit.objects.within(scope).in_state(VisitState.FINISHED))
    return rows.filter(
        Exists(cows), ~Exists(held), ~Exists(bills.drafts()), ~Exists(bills.issued().filter(~Exists(claimed)))
    )


def _since_the_start(scope: Scope, visits: TenantQuerySet[Visit]) -> TenantQuerySet[Visit]:
    """Without those that were billed elsewhere, before the business billed here."""
    rules = money_rules(scope)
    if rules.bills_from is None:
        return visits
    return visits.filter(finished_at__gte=at_local(rules.bills_from, time(0), rules.business.zone))


def _left(scope: Scope) -> TenantQuerySet[Visit]:
    """Visits left unbilled as a whole, the newest first."""
    held = BilledWork.objects.within(scope).filter(
        visit=OuterRef("pk"), holds=True, invoice__isnull=True, line__isnull=True
    )
    rows = Visit.objects.within(scope).filter(Exists(held)).select_related("farm")
    return rows.order_by("-finished_at")[:20]
