"""A message goes as a mail."""

from email.encoders import encode_base64
from email.message import Message
from email.mime.base import MIMEBase
from email.utils import formataddr, parseaddr

from django.conf import settings
from django.core.exceptions import ValidationError
from django.core.mail import EmailMultiAlternatives
from django.core.validators import validate_email

from trimops.outbox.senders.hand_to_mail_server import hand_to_mail_server
from trimops.outbox.senders.ready import Part, Ready, Refused


def send_by_mail(ready: Ready) -> str:
    """Hand it to the mail server; the server's words. Refused, Away, Unsure."""
    try:
        validate_email(ready.address)
        mail = make_mail(ready)
        mail.message()
    except ValidationError as fault:
        raise Refused(f"“{ready.address}” is no e-mail address.", for_good=True) from fault
    except ValueError as fault:
        raise Refused(f"The mail could not be made: {fault}", for_good=True) from fault
    return hand_to_mail_server(mail)


def make_mail(ready: Ready) -> EmailMultiAlternatives:
    """The mail as it goes out. Its Message-ID is the message's own, so that a doubled mail is known as one
    (RFC 5322, 3.6.4). What no person sent says so (Auto-Submitted, RFC 3834, 5), so that no machine answers it."""
    our_address = parseaddr(settings.DEFAULT_FROM_EMAIL)[1]
    domain = our_address.rpartition("@")[2] or "localhost"
    headers = {"Message-ID": f"<{ready.key}@{domain}>"}
    if ready.is_automatic:
        headers["Auto-Submitted"] = "auto-generated"
    mail = _Mail(
        ready.subject,
        ready.body,
        formataddr((" ".join(ready.from_name.split()), our_address)),
        [ready.address],
        reply_to=[ready.reply_to] if ready.reply_to else [],
        headers=headers,
    )
    for part in ready.parts:
        _add(mail, part)
    return mail


def _add(mail: "_Mail", part: Part) -> None:
    if part.is_alternative:
        mail.other_forms.append(part)
    else:
        mail.attach(part.name or None, part.content, part.media_type)


class _Mail(EmailMultiAlternatives):
    """Django's own alternatives know no parameters of a media type, and a calendar has a `method` (RFC 6047, 2.4)."""

    def __init__(self, *args: object, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)  # type: ignore[arg-type]
        self.other_forms: list[Part] = []

    def _create_alternatives(self, msg: Message) -> Message:
        whole: Message = super()._create_alternatives(msg)  # type: ignore[misc]
        if not self.other_forms:
            return whole
        outer = MIMEBase("multipart", "alternative")
        outer.attach(whole)
        for part in self.other_forms:
            outer.attach(_form(part))
        return outer


def _form(part: Part) -> Message:
    """One other form of the text, in UTF-8 whatever its type says, coded so that any line length passes."""
    kind, *told = [piece.strip() for piece in part.media_type.split(";")]
    form = MIMEBase(*kind.split("/", 1))
    for each in told:
        name, _, value = each.partition("=")
        form.set_param(name, value.strip('"'))
    if kind.startswith("text/") and form.get_param("charset") is None:
        form.set_param("charset", "utf-8")
    form.set_payload(part.content)
    encode_base64(form)
    return form
