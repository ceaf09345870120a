"""A credit note, a write-off or a part of a payment is no longer set against an invoice."""

from datetime import datetime

from django.db import transaction

from invoicing.domain.settling import SettledBy
from invoicing.models import Allocation
from invoicing.services.lock_invoices import lock_invoices
from invoicing.services.settle_invoice import settle_invoice
from invoicing.services.undo_allocation import undo_allocation
from trimops.kernel.errors import RuleBroken


class CannotUndo(RuleBroken):
    """It is undone by taking the payment back."""

    code = "cannot_undo"


@transaction.atomic
def undo_set_off(*, allocation: Allocation, because: str, at: datetime) -> None:
    """The invoice (and the credit note) is open again by that much; a part of a payment goes back to its rest.

    ReasonMissing without a reason; CannotUndo for money paid back on a credit note: take that payment back instead.
    """
    if allocation.payment is not None and allocation.payment.amount < 0:
        raise CannotUndo("Money went out: take the payment back instead.")
    keys = {allocation.invoice_id}
    if allocation.kind == SettledBy.CREDIT and allocation.credit_note_id:
        keys.add(allocation.credit_note_id)
    invoices = lock_invoices(scope=allocation.scope, keys=keys)
    undo_allocation(allocation=allocation, because=because, at=at)
    for invoice in invoices.values():
        settle_invoice(invoice=invoice)
