"""A payment that was noted wrongly, or that the bank called back, no longer counts; nothing is deleted."""

from datetime import datetime

from django.db import transaction

from invoicing.models import Allocation, Payment
from invoicing.services.lock_invoices import lock_invoices
from invoicing.services.lock_period import refuse_locked
from invoicing.services.settle_invoice import settle_invoice
from invoicing.services.undo_allocation import undo_allocation
from invoicing.services.want_reason import want_reason
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken


class CannotTakeBack(RuleBroken):
    """Something else stands on this payment."""

    code = "cannot_take_back"


@transaction.atomic
def take_back_payment(*, payment: Payment, because: str, at: datetime, by: User) -> Payment:
    """Undo all it was set against and mark it taken back; its bank entry can be matched again. Done twice is done once.

    CannotTakeBack while money paid back from it stands, or when somebody sets it against more at this moment;
    ReasonMissing without a reason; PeriodLocked when its day is closed.
    """
    rows = Allocation.objects.within(payment.scope).standing().filter(payment=payment)
    seen = set(rows.values_list("invoice_id", flat=True))
    invoices = lock_invoices(scope=payment.scope, keys=seen)
    row = payment.locked()
    if row.taken_back_at is not None:
        return row
    reason = want_reason(words=because, ask="Say why the payment is taken back: the reason is kept.")
    if Payment.objects.within(row.scope).standing().filter(pays_back=row).exists():
        raise CannotTakeBack("Money was paid back from this payment: take that back first.")
    allocations = list(rows.all())
    if {allocation.invoice_id for allocation in allocations} - seen:
        raise CannotTakeBack("Somebody just set this payment against another invoice: look at it again.")
    refuse_locked(scope=row.scope, day=row.received_on)
    for allocation in allocations:
        undo_allocation(allocation=allocation, because=reason, at=at)
    row.taken_back_at, row.taken_back_by, row.taken_back_because = at, by, reason[:200]
    row.full_clean()
    row.save()
    for invoice in invoices.values():
        settle_invoice(invoice=invoice)
    return row
