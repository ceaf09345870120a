"""The link in a mail with an invoice: a new one for a mail that is tried again, none left of a mail that never went."""

from datetime import datetime

from django.db import transaction

from invoicing.models import Sending
from invoicing.services.close_invoice_link import close_invoice_link
from invoicing.services.make_invoice_link import make_invoice_link
from trimops.outbox.models import Outgoing


@transaction.atomic
def renew_mail_link(*, outgoing: Outgoing, at: datetime) -> str:
    """The address of a new link, since only the hash of the old one is kept; empty for a mail without. FarmIsErased."""
    sending = _sending_of(outgoing)
    if sending is None or not sending.with_link or sending.invoice is None:
        return ""
    made = make_invoice_link(invoice=sending.invoice, at=at)
    sending.link = made.row
    sending.save(update_fields=["link"])
    return made.address


@transaction.atomic
def drop_mail_link(*, outgoing: Outgoing, at: datetime) -> None:
    """Nobody has the mail: what its link would open is closed."""
    sending = _sending_of(outgoing)
    if sending is not None and sending.link is not None:
        close_invoice_link(link=sending.link, at=at)


def _sending_of(outgoing: Outgoing) -> Sending | None:
    rows = Sending.objects.within(outgoing.scope).select_related("invoice__farm", "link")
    return rows.filter(outgoing=outgoing).first()
