"""What a mail with a paper of the money says and brings."""

from dataclasses import dataclass

from django.utils.timezone import localtime

from invoicing.domain.paper_names import paper_name
from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Invoice, InvoiceLink, Reminder
from trimops.kernel.errors import RuleBroken
from trimops.outbox.domain.outgoing_states import SECRET_PLACE
from trimops.outbox.senders.ready import Part

PDF, XML = "application/pdf", "application/xml"


class NothingToSend(RuleBroken):
    """A mail wants a subject, a text and a paper."""

    code = "nothing_to_send"


@dataclass(frozen=True)
class MailPaper:
    """What is sent: the PDF `attachment` by its name, else that of the reminder and its invoice, or the invoice's."""

    kind: SentPaper
    invoice: Invoice | None = None
    reminder: Reminder | None = None
    attachment: bytes | None = None
    attachment_name: str = ""
    with_xml: bool = False


def mail_text(body: str, link: InvoiceLink | None) -> str:
    """The text as it goes; the address of the link comes in when the mail goes."""
    if link is None:
        return f"{body}\n"
    until = localtime(link.expires_at, link.business.zone)
    return (
        f"{body}\n\n"
        f"What it is for, how to pay it and what of it is paid also stands here, until {until:%-d %b %Y}:\n\n"
        f"{SECRET_PLACE}\n\n"
        "Whoever has this address can open it.\n"
    )


def mail_papers(paper: MailPaper) -> list[Part]:
    """At least one. NothingToSend where the PDF is not there."""
    found: list[Part] = []
    if paper.attachment is not None:
        found.append(Part(paper.attachment_name or "paper.pdf", PDF, paper.attachment))
    elif paper.reminder is not None:
        found += _reminder(paper.reminder)
    if paper.invoice is not None:
        found += _invoice(paper.invoice, paper)
    if not found:
        raise NothingToSend("There is no paper to send.")
    return found


def _reminder(reminder: Reminder) -> list[Part]:
    if not reminder.pdf:
        return []
    return [Part(f"reminder-{paper_name(reminder.invoice.number)}.pdf", PDF, bytes(reminder.pdf))]


def _invoice(invoice: Invoice, paper: MailPaper) -> list[Part]:
    """The PDF, and on wish the e-invoice as UBL: as CII it is inside the PDF already."""
    papers = invoice.papers
    if papers is None:
        return []
    name = paper_name(invoice.number)
    found = [Part(f"{name}.pdf", PDF, bytes(papers.pdf))]
    if paper.with_xml and papers.ubl and paper.kind is SentPaper.INVOICE:
        found.append(Part(f"{name}.xml", XML, bytes(papers.ubl)))
    return found
