"""A draft is locked before it is changed; an issued one is not a draft any more."""

from invoicing.models import Invoice
from trimops.kernel.errors import RuleBroken


class NotADraft(RuleBroken):
    """It was issued in the meantime."""

    code = "not_a_draft"


def lock_draft(*, invoice: Invoice) -> Invoice | None:
    """The draft, read anew and locked until the transaction ends; None when it was issued or is gone."""
    row = Invoice.objects.within(invoice.scope).filter(pk=invoice.pk).locked().first()
    return None if row is None or row.is_issued else row


def locked_draft(*, invoice: Invoice) -> Invoice:
    """The same, where there must be one: NotADraft otherwise."""
    row = lock_draft(invoice=invoice)
    if row is None:
        raise NotADraft("This is issued, or gone: an issued invoice cannot be changed. Credit it instead.")
    return row
