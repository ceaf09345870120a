"""Overdue invoices are put forward to be reminded of. Nothing is sent: a person decides on each."""

from collections import defaultdict
from datetime import date, datetime

from django.db import transaction

from invoicing.domain.reminder_steps import PastStep, ReminderState, due_step, read_days
from invoicing.models import Invoice, Reminder
from invoicing.models.invoice import InvoiceQuerySet
from invoicing.selectors.money_rules import money_rules
from trimops.accounts.models import Business
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.tenancy.querysets import TenantQuerySet


@transaction.atomic
def propose_reminders(*, business: Business, at: datetime) -> int:
    """Put forward the step that is due of each overdue invoice, and take back what fell away. How many are new.

    Doing it twice changes nothing: each step of an invoice is there once.
    """
    scope, today = Scope(business.pk), local_day(at, business.zone)
    days = read_days(money_rules(scope).reminder_days)
    invoices = _overdue(scope, today)
    _fallen_away(scope, invoices).delete()
    if not days:
        return 0
    past = _past_steps(scope, business, invoices)
    rows = [
        Reminder(business=business, invoice_id=key, step=step, proposed_at=at)
        for key, due_on in invoices.values_list("pk", "due_on")
        if due_on and (step := due_step(due_on, today, days, past[key]))
    ]
    Reminder.objects.bulk_create(rows, ignore_conflicts=True)
    return len(rows)


def _overdue(scope: Scope, today: date) -> InvoiceQuerySet:
    """Open invoices past their day, of farms that get reminders."""
    rows: InvoiceQuerySet = Invoice.objects.within(scope).issued().bills()
    late = rows.filter(is_open=True, due_on__lt=today, farm__erased_at__isnull=True)
    return late.exclude(farm__terms__gets_reminders=False).order_by("due_on", "pk")


def _fallen_away(scope: Scope, invoices: InvoiceQuerySet) -> TenantQuerySet[Reminder]:
    """Proposals whose invoice was paid meanwhile, or whose farm gets no reminders any more."""
    rows = Reminder.objects.within(scope).filter(state=ReminderState.PROPOSED.value)
    fallen: TenantQuerySet[Reminder] = rows.exclude(invoice__in=invoices.order_by().values("pk"))
    return fallen


def _past_steps(scope: Scope, business: Business, invoices: InvoiceQuerySet) -> dict[int, list[PastStep]]:
    found: dict[int, list[PastStep]] = defaultdict(list)
    rows = Reminder.objects.within(scope).filter(invoice__in=invoices.order_by().values("pk"))
    for key, step, decided_at in rows.values_list("invoice_id", "step", "decided_at"):
        decided_on = local_day(decided_at, business.zone) if decided_at else None
        found[key].append(PastStep(step, decided_on))
    return found
