"""Issue a draft and send it, in one go."""

from datetime import datetime

from django.db import transaction

from invoicing.models import Invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.send_invoice import send_invoice
from trimops.accounts.models import User


@transaction.atomic
def issue_and_send(*, invoice: Invoice, at: datetime, by: User) -> Invoice:
    """Both or neither: where it cannot be sent (no address, say) it is not issued either, and the refusal says why.

    The mail itself goes by a job after the commit; its log says whether the server took it.
    """
    issued = issue_invoice(invoice=invoice, at=at, by=by)
    send_invoice(invoice=issued, at=at, by=by)
    return issued
