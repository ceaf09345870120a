"""Background jobs of the money."""

import logging
from datetime import timedelta

from django.utils import timezone

from invoicing.models import Invoice
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_run import issue_in_run
from invoicing.services.keep_day_journeys import keep_journeys
from invoicing.services.propose_reminders import propose_reminders
from invoicing.services.renew_mail_link import drop_mail_link, renew_mail_link
from trimops.accounts.models import Business, User
from trimops.errands.does import does
from trimops.errands.row_of import row_of
from trimops.jobs import Job
from trimops.kernel.clock import local_day
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.owners import OWNERS, Owner
from visits.models import Visit

log = logging.getLogger(__name__)

OWNERS |= dict.fromkeys(
    (topic for topic in Topic if topic.is_money),
    Owner(
        renew=lambda outgoing, at: renew_mail_link(outgoing=outgoing, at=at),
        never_went=lambda outgoing, at: drop_mail_link(outgoing=outgoing, at=at),
    ),
)

LATE_VISITS = timedelta(days=7)
"""A phone without signal may bring a visit some days later."""


@does(Job.DRAFT_INVOICE)
def draft_invoice_task(visit_id: int) -> None:
    """A visit that was erased with its farm meanwhile is not billed."""
    draft_invoice(visit=row_of(Visit, visit_id, "business"), at=timezone.now())


@does(Job.ISSUE_INVOICE)
def issue_invoice_task(invoice_id: int, by_id: int, send: int = 0) -> None:
    """A draft that was taken away meanwhile, or is refused, is left to its page: nothing is tried again."""
    invoice = row_of(Invoice, invoice_id, "business")
    try:
        issue_in_run(invoice=invoice, at=timezone.now(), by=User.objects.get(pk=by_id), send=bool(send))
    except RuleBroken as refused:
        log.warning("draft %s is not issued: %s", invoice_id, refused.message)


@does(Job.PROPOSE_REMINDERS)
def propose_reminders_task(business_id: int) -> None:
    """Once a day each business's overdue invoices are looked through."""
    propose_reminders(business=Business.objects.get(pk=business_id), at=timezone.now())


@does(Job.KEEP_JOURNEYS)
def keep_journeys_task(business_id: int) -> None:
    """In the night of a business the drives of its last week go into the log."""
    business, now = Business.objects.get(pk=business_id), timezone.now()
    today = local_day(now, business.zone)
    keep_journeys(business=business, first=today - LATE_VISITS, last=today, at=now)
