"""A paper is put on its way to one address."""

from datetime import datetime

from django.core.exceptions import ValidationError
from django.core.validators import validate_email
from django.db import transaction

from farms.models import Farm
from farms.services.refuse_erased import refuse_erased
from invoicing.domain.sending_states import SendingState, SentPaper
from invoicing.models import Invoice, Reminder, Sending
from invoicing.services.note_sending import note_sending
from trimops.accounts.models import User
from trimops.jobs import Job, enqueue
from trimops.kernel.errors import RuleBroken

MOST_SUBJECT = 200


class AddressMakesNoSense(RuleBroken):
    """What was given is no e-mail address."""

    code = "address_makes_no_sense"


class NoAddress(RuleBroken):
    """It is not known where the farm's money papers go."""

    code = "no_address"


class NothingToSend(RuleBroken):
    """A mail wants a subject, a text and a paper."""

    code = "nothing_to_send"


@transaction.atomic
def queue_sending(
    *,
    farm: Farm,
    paper: SentPaper,
    address: str,
    subject: str,
    body: str,
    at: datetime,
    by: User | None,
    invoice: Invoice | None = None,
    reminder: Reminder | None = None,
    attachment: bytes | None = None,
    attachment_name: str = "",
    with_xml: bool = False,
    with_link: bool = False,
) -> Sending:
    """One mail to one address, begun once the transaction commits. AddressMakesNoSense, NothingToSend, FarmIsErased.

    The paper is the invoice's or the reminder's own PDF, or `attachment`. `with_link`: the mail ends with a secret
    address that opens the invoice, made when it goes.
    """
    refuse_erased(farm=farm)
    sending = Sending(business_id=farm.business_id, farm=farm, paper=paper.value, invoice=invoice)
    sending.reminder, sending.attachment, sending.attachment_name = reminder, attachment, attachment_name
    sending.address, sending.with_xml = sound_address(address), with_xml
    sending.with_link = with_link and invoice is not None
    sending.subject, sending.body = " ".join(subject.split())[:MOST_SUBJECT], body.strip()
    sending.queued_at, sending.queued_by = at, by
    if not sending.subject or not sending.body:
        raise NothingToSend("A mail wants a subject and a text: write both.")
    if invoice is None and reminder is None and attachment is None:
        raise NothingToSend("There is no paper to send.")
    sending.full_clean()
    sending.save()
    words = f"Asked for by {by}" if by else ""
    note_sending(sending=sending, state=SendingState.QUEUED, at=at, words=words)
    enqueue(Job.SEND_PAPER, sending_id=sending.pk)
    return sending


def sound_address(text: str) -> str:
    """The address without space around it. AddressMakesNoSense when it is none."""
    address = text.strip()
    try:
        validate_email(address)
    except ValidationError as fault:
        raise AddressMakesNoSense(f"“{address}” is no e-mail address: mend it or untick it.") from fault
    return address
