"""The mail of a sending: its text, its papers, and who is answered."""

from email.utils import formataddr, parseaddr

from django.conf import settings
from django.core.mail import EmailMessage
from django.utils.timezone import localtime

from invoicing.domain.paper_names import paper_name
from invoicing.domain.sending_states import SentPaper
from invoicing.models import Invoice, Reminder, Sending
from invoicing.services.make_invoice_link import NewInvoiceLink
from trimops.kernel.errors import RuleBroken

PDF, XML = "application/pdf", "application/xml"


class PaperIsMissing(RuleBroken):
    """What was to be sent is not there."""

    code = "paper_is_missing"


def make_mail(*, sending: Sending, link: NewInvoiceLink | None) -> EmailMessage:
    """The mail as it goes out. Its Message-ID is the sending's own, so that a doubled mail is known as one.

    PaperIsMissing where the PDF is not there.
    """
    business = sending.business
    our_address = parseaddr(settings.DEFAULT_FROM_EMAIL)[1]
    domain = our_address.rpartition("@")[2] or "localhost"
    mail = EmailMessage(
        sending.subject,
        _text(sending, link),
        formataddr((" ".join(business.name.split()), our_address)),
        [sending.address],
        reply_to=[business.email] if business.email else [],
        headers={"Message-ID": f"<{sending.message_id}@{domain}>"},
    )
    for name, content, kind in _papers(sending):
        mail.attach(name, content, kind)
    return mail


def _text(sending: Sending, link: NewInvoiceLink | None) -> str:
    if link is None:
        return f"{sending.body}\n"
    until = localtime(link.row.expires_at, sending.business.zone)
    return (
        f"{sending.body}\n\n"
        f"What it is for, how to pay it and what of it is paid also stands here, until {until:%-d %b %Y}:\n\n"
        f"{link.address}\n\n"
        "Whoever has this address can open it.\n"
    )


def _papers(sending: Sending) -> list[tuple[str, bytes, str]]:
    """Name, content and kind of each; at least one."""
    found: list[tuple[str, bytes, str]] = []
    if sending.attachment is not None:
        found.append((sending.attachment_name or "paper.pdf", bytes(sending.attachment), PDF))
    if sending.reminder is not None and sending.attachment is None:
        found += _reminder(sending.reminder)
    if sending.invoice is not None:
        found += _invoice(sending.invoice, sending)
    if not found:
        raise PaperIsMissing("The paper that was to be sent is not there any more.")
    return found


def _reminder(reminder: Reminder) -> list[tuple[str, bytes, str]]:
    if not reminder.pdf:
        return []
    return [(f"reminder-{paper_name(reminder.invoice.number)}.pdf", bytes(reminder.pdf), PDF)]


def _invoice(invoice: Invoice, sending: Sending) -> list[tuple[str, bytes, str]]:
    """The PDF, and on wish the e-invoice as UBL: as CII it is inside the PDF already."""
    papers = invoice.papers
    if papers is None:
        return []
    name = paper_name(invoice.number)
    found = [(f"{name}.pdf", bytes(papers.pdf), PDF)]
    if sending.with_xml and papers.ubl and sending.paper == SentPaper.INVOICE:
        found.append((f"{name}.xml", bytes(papers.ubl), XML))
    return found
