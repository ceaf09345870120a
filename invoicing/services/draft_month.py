"""A farm's month on one invoice."""

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta

from django.db import transaction

from farms.models import Farm
from invoicing.domain.billing_rhythm import month_of
from invoicing.models import BilledWork, Invoice, LateWork
from invoicing.services.lock_draft import lock_draft
from invoicing.services.make_draft import new_draft, price
from invoicing.services.note_late_work import note_late_work
from invoicing.services.store_draft import store_draft
from trimops.kernel.clock import at_local, local_day
from visits.domain.visit_states import VisitState
from visits.models import Visit


@transaction.atomic
def draft_month(*, farm: Farm, month: date, at: datetime, late: Sequence[Visit] = ()) -> Invoice | None:
    """The draft of that month's finished visits which nothing bills yet, made or made anew; None without such work.

    `late` visits were billed before, in part: what is new of them goes onto the draft as well. PriceMissing.
    """
    row = farm.locked()
    first, last = month_of(month)
    rows = Invoice.objects.within(row.scope).bills().drafts().filter(farm=row, visit__isnull=True)
    known = rows.filter(period_from=first, currency=row.business.currency).first()
    draft = lock_draft(invoice=known) if known is not None else None
    visits = _visits(row, first, last, draft, late)
    work = price(row, visits, draft)
    invoice = draft or new_draft(row, last, at)
    if draft is None:
        if not work.costs_something:
            return None
        invoice.period_from, invoice.period_until = first, last
    invoice.payer_id = row.payer_id
    days = [local_day(visit.finished_at or at, row.business.zone) for visit in visits]
    if draft is not None:
        days.append(invoice.tax_point)  # because: the office may have moved it on
    invoice.tax_point = max(days, default=invoice.tax_point)
    result = store_draft(invoice=invoice, work=work, at=at)
    listed = LateWork.objects.within(row.scope).filter(visit__in=visits).values_list("visit_id", flat=True)
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
    zone = farm.business.zone
    since, until = at_local(first, time(0), zone), at_local(last + timedelta(days=1), time(0), zone)
    rows = Visit.objects.within(farm.scope).filter(farm=farm).in_state(VisitState.FINISHED)
    month = rows.filter(finished_at__gte=since, finished_at__lt=until)
    free = month.exclude(pk__in=others.values("visit_id")).values_list("pk", flat=True)
    keys = {*free, *mine, *(visit.pk for visit in late)}
    locked = rows.filter(pk__in=keys).order_by("pk").select_for_update(of=("self",), no_key=True)
    return sorted(locked.select_related("business"), key=lambda visit: (visit.finished_at, visit.pk))
