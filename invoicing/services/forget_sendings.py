"""A farm is erased: its mails, their log and its links go; what was sent stands on the invoices that stay."""

from django.db import transaction

from farms.models import Farm
from invoicing.models import InvoiceLink, Sending
from trimops.kernel.scope import Scope
from trimops.outbox.models import Outgoing


@transaction.atomic
def forget_sendings(*, farm: Farm) -> dict[str, int]:
    """How many of what went. What waits to go does not go any more."""
    scope = Scope(farm.business_id)
    mails = Sending.objects.within(scope).filter(farm=farm)
    links = InvoiceLink.objects.within(scope).filter(invoice__farm=farm)
    gone = {"mails": mails.count(), "links to invoices": links.count()}
    Outgoing.objects.within(scope).filter(pk__in=list(mails.values_list("outgoing", flat=True))).delete()
    links.delete()
    return gone
