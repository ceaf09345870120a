"""An issued invoice goes out by mail."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from django.db import transaction

from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Invoice, Sending
from invoicing.selectors.invoice_mail import InvoiceMail, invoice_mail
from invoicing.services.make_invoice_link import NotIssuedYet
from invoicing.services.make_mail import MailPaper
from invoicing.services.queue_sending import NoAddress, queue_sending, sound_address
from trimops.accounts.models import User
from trimops.outbox.domain.outgoing_states import OutgoingState

SAME_PRESS = timedelta(minutes=1)
"""Nobody means to send the same paper to the same address twice within a minute."""


@transaction.atomic
def send_invoice(
    *,
    invoice: Invoice,
    at: datetime,
    by: User,
    addresses: Sequence[str] | None = None,
    with_xml: bool | None = None,
    subject: str = "",
    body: str = "",
    with_link: bool = True,
) -> list[Sending]:
    """Queue one mail for each address; those of the farm where None are named. The mails, one for each address.

    A second press of the button finds the mails of the first and queues nothing. NotIssuedYet, NoAddress,
    AddressMakesNoSense, NothingToSend, FarmIsErased.
    """
    row = invoice.locked()
    if not row.is_issued:
        raise NotIssuedYet("This is a draft still: issue it first, then send it.")
    mail = invoice_mail(row)
    asked = mail.addresses if addresses is None else addresses
    wanted = list(dict.fromkeys(sound_address(address) for address in asked))
    if not wanted:
        raise NoAddress(
            f"No address for the money papers of {row.farm.name}: put one down in its terms, or in its own or its "
            "payer's details."
        )
    mail = _worded(mail, subject, body, with_xml)
    return [
        _just_now(row, address, at) or _queue(row, address, mail, at, by, with_link) for address in wanted
    ]


def _worded(mail: InvoiceMail, subject: str, body: str, with_xml: bool | None) -> InvoiceMail:
    """The mail with what the person wrote instead."""
    xml = (mail.with_xml if with_xml is None else with_xml) and not mail.no_xml_because
    return replace(mail, subject=subject or mail.subject, body=body or mail.body, with_xml=xml)


def _just_now(invoice: Invoice, address: str, at: datetime) -> Sending | None:
    rows = Sending.objects.within(invoice.scope).filter(
        invoice=invoice, paper=SentPaper.INVOICE.value, outgoing__address__iexact=address
    )
    went = rows.filter(outgoing__state=OutgoingState.WENT.value, outgoing__written_at__gt=at - SAME_PRESS)
    on_its_way = rows.filter(outgoing__state__in=[OutgoingState.WAITING.value, OutgoingState.GOING.value])
    return (went | on_its_way).select_related("outgoing").first()


def _queue(
    invoice: Invoice, address: str, mail: InvoiceMail, at: datetime, by: User, with_link: bool
) -> Sending:
    return queue_sending(
        farm=invoice.farm,
        paper=MailPaper(SentPaper.INVOICE, invoice, with_xml=mail.with_xml),
        address=address,
        subject=mail.subject,
        body=mail.body,
        at=at,
        by=by,
        with_link=with_link,
    )
