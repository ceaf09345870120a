"""A paper is put on its way to one address."""

from datetime import datetime
from typing import cast

from django.core.exceptions import ValidationError
from django.core.validators import validate_email
from django.db import transaction

from farms.models import Farm
from farms.services.refuse_erased import refuse_erased
from invoicing.models import Sending
from invoicing.services.make_invoice_link import NewInvoiceLink, make_invoice_link
from invoicing.services.make_mail import MailPaper, NothingToSend, mail_papers, mail_text
from trimops.accounts.models import User
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.models import Outgoing
from trimops.outbox.services.put_out import Message, put_out


class AddressMakesNoSense(RuleBroken):
    """What was given is no e-mail address."""

    code = "address_makes_no_sense"


class NoAddress(RuleBroken):
    """It is not known where the farm's money papers go."""

    code = "no_address"


@transaction.atomic
def queue_sending(
    *,
    farm: Farm,
    paper: MailPaper,
    address: str,
    subject: str,
    body: str,
    at: datetime,
    by: User | None,
    with_link: bool = False,
) -> Sending:
    """One mail to one address, begun once the transaction commits. AddressMakesNoSense, NothingToSend, FarmIsErased.

    `with_link`: the mail ends with a secret address that opens the invoice, which is closed if it never goes.
    """
    refuse_erased(farm=farm)
    to = sound_address(address)
    if not subject.strip() or not body.strip():
        raise NothingToSend("A mail wants a subject and a text: write both.")
    papers = mail_papers(paper)
    link = (
        make_invoice_link(invoice=paper.invoice, at=at) if with_link and paper.invoice is not None else None
    )
    message = Message(
        channel=Channel.MAIL,
        topic=paper.kind.topic,
        address=to,
        subject=subject,
        body=mail_text(body.strip(), link.row if link else None),
        secret=link.address if link else "",
        farm_id=farm.pk,
        reply_to=farm.business.email,
        parts=papers,
    )
    return _put_out(farm, paper, message, link, at, by)


def _put_out(
    farm: Farm, paper: MailPaper, message: Message, link: NewInvoiceLink | None, at: datetime, by: User | None
) -> Sending:
    # because: only a message with a name of its own can have been written before
    outgoing = cast(Outgoing, put_out(business_id=farm.business_id, message=message, at=at, by=by))
    sending = Sending(business_id=farm.business_id, farm=farm, paper=paper.kind.value, outgoing=outgoing)
    sending.invoice, sending.reminder, sending.with_xml = paper.invoice, paper.reminder, paper.with_xml
    sending.with_link, sending.link = link is not None, link.row if link else None
    sending.full_clean()
    sending.save()
    return sending


def sound_address(text: str) -> str:
    """The address without space around it. AddressMakesNoSense when it is none."""
    address = text.strip()
    try:
        validate_email(address)
    except ValidationError as fault:
        raise AddressMakesNoSense(f"“{address}” is no e-mail address: mend it or untick it.") from fault
    return address
