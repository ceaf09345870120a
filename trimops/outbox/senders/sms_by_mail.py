"""Text messages through a gateway that takes mail: `number@gateway` (common practice of such gateways, no source)."""

from dataclasses import replace

from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.domain.sms_size import sms_size
from trimops.outbox.senders.mail import send_by_mail
from trimops.outbox.senders.ready import Ready


def send_sms_by_mail(ready: Ready, gateway: str) -> str:
    """The mail server's words. The number goes without its plus; the text is the whole mail, with no subject.

    `ready.address`: E.164. Refused, Away, Unsure as for a mail; Away holds up text messages alone.
    """
    address = f"{ready.address.removeprefix('+')}@{gateway}"
    said = send_by_mail(
        replace(ready, channel=Channel.MAIL, address=address, subject="", reply_to="", parts=())
    )
    parts = sms_size(ready.body).parts
    return said if parts == 1 else f"{said} ({parts} parts)"
