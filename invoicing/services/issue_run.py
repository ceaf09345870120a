"""Many drafts are issued in the background, one job each, so that one that cannot be issued stops no other."""

from collections.abc import Iterable
from contextlib import suppress
from datetime import datetime

from django.db import transaction

from invoicing.models import Invoice, Sending
from invoicing.services.issue_invoice import AlreadyIssued, issue_invoice
from invoicing.services.queue_sending import NoAddress
from invoicing.services.send_invoice import send_invoice
from trimops.accounts.models import User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job


@transaction.atomic
def start_issue_run(*, invoices: Iterable[Invoice], by: User, send: bool = False) -> int:
    """Ask the workers for each of the drafts, in the order handed in; how many were asked for.

    What is refused stays a draft, and its page says why when somebody issues it there.
    """
    asked = [invoice for invoice in invoices if not invoice.is_issued]
    for invoice in asked:
        enqueue(Job.ISSUE_INVOICE, invoice.business_id, invoice_id=invoice.pk, by_id=by.pk, send=int(send))
    return len(asked)


@transaction.atomic
def issue_in_run(*, invoice: Invoice, at: datetime, by: User, send: bool) -> Invoice:
    """One draft of the run: issued, and its mails queued where `send`. Doing it again does nothing more.

    A farm without an address gets its invoice issued all the same: it stands among those not sent.
    """
    try:
        issued = issue_invoice(invoice=invoice, at=at, by=by)
    except AlreadyIssued:
        issued = invoice.locked()
    if send and not Sending.objects.within(issued.scope).filter(invoice=issued).exists():
        with suppress(NoAddress):
            send_invoice(invoice=issued, at=at, by=by)
    return issued
