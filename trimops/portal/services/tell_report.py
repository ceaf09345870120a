"""People of the farm are told that a report is there."""

from dataclasses import replace
from datetime import datetime, timedelta
from urllib.parse import urlencode

from django.conf import settings
from django.db import transaction
from django.urls import reverse

from farms.domain.told_by import FALLBACK
from farms.models import Contact, FarmAccess
from trimops.accounts.models import User
from trimops.outbox.domain.outgoing_states import SECRET_PLACE, Channel, Topic
from trimops.outbox.senders.ready import Part
from trimops.outbox.services.put_out import Message, put_out
from trimops.portal.selectors.link_readers import may_come_by_link
from trimops.portal.services.make_link import LinkKind, make_link
from visits.documents.visit_report_said import ReportSaid
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.messages.message_values import MessageFacts
from visits.models import IssuedReport
from visits.selectors.issued_reports import stored_words
from visits.selectors.messages.texts_in_use import texts_of
from visits.selectors.messages.written_message import written_mail


@transaction.atomic
def tell_report(*, report: IssuedReport, at: datetime) -> list[str]:
    """Mail everybody who gets it and was not told of this version; the addresses.

    A person who may read it here gets a link that signs them in, a contact without an account the PDF. Each address is
    told of a version once, however often this runs.
    """
    row = report.locked()
    said = stored_words(row)
    readers = {user.email: user for user in _readers(row)}
    contacts = {contact.email.lower(): contact.language for contact in _contacts(row)}
    mails = [_with_link(row, said, user, at) for user in readers.values()]
    others = sorted(contacts.keys() - readers.keys())
    mails += [_with_paper(row, said, email, contacts[email]) for email in others]
    told = [mail.address for mail in mails if put_out(business_id=row.business_id, message=mail, at=at)]
    if told:
        row.mailed_to = [*row.mailed_to, *told]
        row.save(update_fields=["mailed_to"])
    return told


def _readers(row: IssuedReport) -> list[User]:
    """The people of the farm who are in and may read reports."""
    rows = FarmAccess.objects.within(row.scope).filter(farm_id=row.visit.farm_id, reads_reports=True)
    here = rows.filter(membership__joined_at__isnull=False, membership__ended_at__isnull=True)
    users = here.filter(membership__user__is_active=True).select_related("membership__user")
    return [access.membership.user for access in users.order_by("membership__user__email")]


def _contacts(row: IssuedReport) -> list[Contact]:
    rows = Contact.objects.within(row.scope).filter(farm_id=row.visit.farm_id, gets_reports=True)
    return list(rows.exclude(email="").order_by("email"))


def _with_link(row: IssuedReport, said: ReportSaid, user: User, at: datetime) -> Message:
    page = reverse("portal_report", args=[row.visit_id])
    if not may_come_by_link(user):
        end = f"Read it here:\n\n{settings.SITE_ADDRESS}{page}\n\nSign in with your password to read it.\n"
        return _mail(row, said, user.email, end)
    door = reverse("come_in_by_link", args=[make_link(user=user, kind=LinkKind.TOLD)])
    address = f"{settings.SITE_ADDRESS}{door}?{urlencode({'farm': row.visit.farm_id, 'next': page})}"
    words = "The link signs you in once, within two weeks; after that your password or a new link does."
    mail = _mail(row, said, user.email, f"Read it here:\n\n{SECRET_PLACE}\n\n{words}\n")
    ends = at + timedelta(seconds=LinkKind.TOLD.seconds)
    return replace(mail, secret=address, worthless_after=ends)


def _with_paper(row: IssuedReport, said: ReportSaid, email: str, language: str) -> Message:
    name = f"visit-report-{row.visit.finished_at:%Y-%m-%d}.pdf" if row.visit.finished_at else "report.pdf"
    part = Part(name, "application/pdf", bytes(row.pdf))
    return replace(_mail(row, said, email, "The report is attached.", language), parts=[part])


def _mail(row: IssuedReport, said: ReportSaid, email: str, end: str, language: str = FALLBACK) -> Message:
    """By the business's text, which usually begins with two lines that can be read on a locked phone: what is the
    vet's, and when blocks must be off.
    """
    business = row.visit.business
    version = f", version {row.version}" if row.version > 1 else ""
    lines = [f"{said.title}{version}.", *([said.change] if said.change else []), "", *_two_lines(said)]
    facts = MessageFacts(
        farm=row.visit.farm.name,
        business=business.name,
        zone=business.zone,
        phone=business.phone,
        hour=row.visit.finished_at or row.made_at,
        link=end.strip(),
        report="\n".join(lines),
    )
    text = written_mail(MessageKind.REPORT, facts, texts_of(row.scope), language, "")
    return Message(
        channel=Channel.MAIL,
        topic=Topic.REPORT,
        address=email,
        subject=f"{text.subject}{version}",
        body=text.body,
        once=f"report:{row.pk}:{email}",
        farm_id=row.visit.farm_id,
        reply_to=business.email,
    )


def _two_lines(said: ReportSaid) -> list[str]:
    vet = "; ".join(f"{line.lead} {line.text}".strip() for line in said.vet)
    blocks = "; ".join(
        f"{due.day}: {', '.join(f'{line.lead} {line.text}'.strip() for line in due.lines)}"
        for due in said.blocks
    )
    return [
        f"For the vet: {vet}." if vet else "Nothing for the vet.",
        f"Blocks to come off: {blocks}." if blocks else "No block was put on.",
    ]
