"""A farm's month on one invoice. The farm is locked by who calls."""

from collections.abc import Sequence
from datetime import date, datetime

from django.db import transaction

from farms.models import Farm
from invoicing.domain.tax_periods import month_of
from invoicing.models import BilledWork, Invoice, LateWork
from invoicing.selectors.draft_work import claims_on
from invoicing.selectors.farm_terms import farm_terms
from invoicing.services.lock_draft import lock_draft
from invoicing.services.make_draft import AtHand, new_draft, price
from invoicing.services.note_late_work import note_late_work
from invoicing.services.store_draft import store_draft
from trimops.kernel.clock import from_to, local_day
from visits.domain.visit_states import VisitState
from visits.models import Visit


@transaction.atomic
def draft_month(*, farm: Farm, month: date, at: datetime, late: Sequence[Visit] = ()) -> Invoice | None:
    """The draft of that month's finished visits which nothing bills yet, made or made anew; None without such work.

    `late` visits were billed before, in part: what is new of them goes onto the draft as well. PriceMissing.
    """
    period = month_of(month)
    first, last = period.first, period.last
    rows = Invoice.objects.within(farm.scope).bills().drafts().filter(farm=farm, visit__isnull=True)
    known = rows.filter(period_from=first, currency=farm.business.currency).first()
    draft = lock_draft(invoice=known) if known is not None else None
    visits = _visits(farm, first, last, draft, late)
    at_hand = AtHand(farm_terms(farm), claims_on(farm.scope, visits))
    work = price(farm, visits, draft, at_hand)
    invoice = draft or new_draft(farm, last, at, at_hand.terms)
    if draft is None:
        if not work.costs_something:
            return None
        invoice.period_from, invoice.period_until = first, last
    invoice.payer_id = farm.payer_id
    days = [local_day(visit.finished_at or at, farm.business.zone) for visit in visits]
    if draft is not None:
        days.append(invoice.tax_point)  # because: the office may have moved it on
    invoice.tax_point = max(days, default=invoice.tax_point)
    result = store_draft(invoice=invoice, work=work, at=at)
    listed = LateWork.objects.within(farm.scope).filter(visit__in=visits).values_list("visit_id", flat=True)
    noted = {*listed, *(visit.pk for visit in late)}
    for visit in visits:
        if visit.pk in noted:
            note_late_work(visit=visit, at=at)
    return result


def _visits(farm: Farm, first: date, last: date, draft: Invoice | None, late: Sequence[Visit]) -> list[Visit]:
    """The month's finished visits that nothing holds, those on the draft, and the late ones; locked, by day."""
    claims = BilledWork.objects.within(farm.scope).filter(visit__farm=farm, holds=True)
    others = claims.exclude(invoice=draft) if draft is not None else claims
    mine = claims.filter(invoice=draft).values_list("visit_id", flat=True) if draft is not None else []
    since, until = from_to(first, last, farm.business.zone)
    rows = Visit.objects.within(farm.scope).filter(farm=farm).in_state(VisitState.FINISHED)
    month = rows.filter(finished_at__gte=since, finished_at__lt=until)
    free = month.exclude(pk__in=others.values("visit_id")).values_list("pk", flat=True)
    keys = {*free, *mine, *(visit.pk for visit in late)}
    locked = rows.filter(pk__in=keys).order_by("pk").select_related("business").locked()
    return sorted(locked, key=lambda visit: (visit.finished_at, visit.pk))
