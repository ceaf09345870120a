"""A message goes as a text message, by the way that `TRIMOPS_SMS` names."""

from dataclasses import replace

from django.conf import settings

from trimops.outbox.domain.phone_number import NoSuchNumber, mobile_number
from trimops.outbox.senders.ready import Ready, Refused
from trimops.outbox.senders.sms_by_mail import send_sms_by_mail
from trimops.outbox.senders.sms_file import write_sms

BY_MAIL = "mail:"


def send_by_sms(ready: Ready) -> str:
    """The words of whoever took it. Refused, Away, Unsure. A number without a country is of the business's own."""
    way = settings.SMS
    if not way:
        raise Refused("No way for text messages is set up on this machine (TRIMOPS_SMS).", for_good=True)
    try:
        numbered = replace(ready, address=mobile_number(ready.address, ready.country))
    except NoSuchNumber as fault:
        raise Refused(str(fault), for_good=True) from None
    if way.startswith(BY_MAIL):
        return send_sms_by_mail(numbered, way.removeprefix(BY_MAIL))
    if way == "file":
        return write_sms(numbered, settings.DATA_DIR / "sms")
    raise Refused("TRIMOPS_SMS names no way that there is: “file” or “mail:gateway.example”.", for_good=True)
