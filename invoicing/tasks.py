"""Background jobs of the money."""

import logging
from collections.abc import Callable
from datetime import timedelta

from celery import shared_task
from django.utils import timezone

from invoicing.models import Invoice, Sending
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.hand_over_sending import hand_over_sending
from invoicing.services.issue_run import issue_in_run
from invoicing.services.keep_day_journeys import keep_journeys
from invoicing.services.propose_reminders import propose_reminders
from invoicing.services.sweep_sendings import sweep_sendings
from trimops.accounts.models import Business, User
from trimops.jobs import Job
from trimops.kernel.clock import is_night, local_day
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope
from trimops.tenancy.unscoped import unscoped
from visits.models import Visit

log = logging.getLogger(__name__)

LATE_VISITS = timedelta(days=7)
"""A phone without signal may bring a visit some days later."""


@shared_task(name=Job.DRAFT_INVOICE)
def draft_invoice_task(visit_id: int) -> None:
    """A visit that was erased with its farm meanwhile is not billed."""
    with unscoped("a job is handed one row"):
        visit = Visit.objects.select_related("business").filter(pk=visit_id).first()
    if visit is not None:
        draft_invoice(visit=visit, at=timezone.now())


@shared_task(name=Job.ISSUE_INVOICE)
def issue_invoice_task(invoice_id: int, by_id: int, send: int = 0) -> None:
    """A draft that was taken away meanwhile, or is refused, is left to its page: nothing is tried again."""
    with unscoped("a job is handed one row"):
        invoice = Invoice.objects.select_related("business").filter(pk=invoice_id).first()
    if invoice is None:
        return
    try:
        issue_in_run(invoice=invoice, at=timezone.now(), by=User.objects.get(pk=by_id), send=bool(send))
    except RuleBroken as refused:
        log.warning("draft %s is not issued: %s", invoice_id, refused.message)


@shared_task(name=Job.SEND_PAPER, soft_time_limit=240, time_limit=300)
def send_paper_task(sending_id: int) -> None:
    """Ended by force well before the sweep says that it is not known what came of it."""
    with unscoped("a job is handed one row"):
        sending = Sending.objects.filter(pk=sending_id).first()
    if sending is not None:
        hand_over_sending(sending=sending, clock=timezone.now)


@shared_task(name=Job.SWEEP_SENDINGS)
def sweep_sendings_task() -> None:
    _for_each_business(lambda business: sweep_sendings(scope=Scope(business.pk), at=timezone.now()))


@shared_task(name=Job.PROPOSE_REMINDERS)
def propose_reminders_task() -> None:
    """Ticks every hour; each business's overdue invoices are looked through in the hour of its own night."""
    now = timezone.now()

    def propose(business: Business) -> None:
        if is_night(now, business.zone):
            propose_reminders(business=business, at=now)

    _for_each_business(propose)


@shared_task(name=Job.KEEP_JOURNEYS)
def keep_journeys_task() -> None:
    """Ticks every hour; in the hour of a business's night the drives of its last week go into the log."""
    now = timezone.now()

    def keep(business: Business) -> None:
        if is_night(now, business.zone):
            today = local_day(now, business.zone)
            keep_journeys(business=business, first=today - LATE_VISITS, last=today, at=now)

    _for_each_business(keep)


def _for_each_business(do: Callable[[Business], object]) -> None:
    """One after the other; where it fails for one it is logged, and the others get their mails and reminders."""
    for business in Business.objects.order_by("id"):
        try:
            do(business)
        except Exception:  # because: whatever is wrong with the rows of one is no reason to stop the others
            log.exception("left out: business %s", business.pk)
