"""People of the farm are told that a report is there."""

from datetime import datetime
from urllib.parse import urlencode

from django.conf import settings
from django.core.mail import EmailMessage
from django.db import transaction
from django.urls import reverse

from farms.models import Contact, FarmAccess
from trimops.accounts.models import User
from trimops.portal.selectors.link_readers import may_come_by_link
from trimops.portal.services.make_link import LinkKind, make_link
from visits.documents.visit_report_said import ReportSaid
from visits.models import IssuedReport
from visits.selectors.issued_reports import stored_words


@transaction.atomic
def tell_report(*, report: IssuedReport, at: datetime) -> list[str]:
    """Mail everybody who gets it and was not told of this version; the addresses.

    A person who may read it here gets a link that signs them in, a contact without an account the PDF. Whoever is
    told is kept on the row before a mail leaves, so that a job that runs twice tells nobody twice.
    """
    row = report.locked()
    said = stored_words(row)
    readers = {user.email: user for user in _readers(row)}
    contacts = {contact.email.lower() for contact in _contacts(row)} - readers.keys()
    told = set(row.mailed_to)
    mails = [_with_link(row, said, user) for email, user in readers.items() if email not in told]
    mails += [_with_paper(row, said, email) for email in sorted(contacts - told)]
    if mails:
        row.mailed_to = [*row.mailed_to, *(address for mail in mails for address in mail.to)]
        row.save(update_fields=["mailed_to"])
        for mail in mails:
            transaction.on_commit(
                mail.send, robust=True
            )  # because: one bad address keeps no other from its mail
    return [address for mail in mails for address in mail.to]


def _readers(row: IssuedReport) -> list[User]:
    """The people of the farm who are in and may read reports."""
    rows = FarmAccess.objects.within(row.scope).filter(farm_id=row.visit.farm_id, reads_reports=True)
    here = rows.filter(membership__joined_at__isnull=False, membership__ended_at__isnull=True)
    users = here.filter(membership__user__is_active=True).select_related("membership__user")
    return [access.membership.user for access in users.order_by("membership__user__email")]


def _contacts(row: IssuedReport) -> list[Contact]:
    rows = Contact.objects.within(row.scope).filter(farm_id=row.visit.farm_id, gets_reports=True)
    return list(rows.exclude(email="").order_by("email"))


def _with_link(row: IssuedReport, said: ReportSaid, user: User) -> EmailMessage:
    page = reverse("portal_report", args=[row.visit_id])
    if may_come_by_link(user):
        door = reverse("come_in_by_link", args=[make_link(user=user, kind=LinkKind.TOLD)])
        address = f"{settings.SITE_ADDRESS}{door}?{urlencode({'farm': row.visit.farm_id, 'next': page})}"
        words = "The link signs you in once, within two weeks; after that your password or a new link does."
    else:
        address, words = f"{settings.SITE_ADDRESS}{page}", "Sign in with your password to read it."
    return _mail(row, said, user.email, f"Read it here:\n\n{address}\n\n{words}\n")


def _with_paper(row: IssuedReport, said: ReportSaid, email: str) -> EmailMessage:
    mail = _mail(row, said, email, "The report is attached.\n")
    name = f"visit-report-{row.visit.finished_at:%Y-%m-%d}.pdf" if row.visit.finished_at else "report.pdf"
    mail.attach(name, bytes(row.pdf), "application/pdf")
    return mail


def _mail(row: IssuedReport, said: ReportSaid, email: str, end: str) -> EmailMessage:
    """Two lines that can be read on a locked phone: what is the vet's, and when blocks must be off."""
    business = row.visit.business
    version = f", version {row.version}" if row.version > 1 else ""
    lines = [f"{said.title}{version}.", *([said.change] if said.change else []), "", *_two_lines(said)]
    text = "\n".join(
        [*lines, "", end, f"{business.name}{f', {business.phone}' if business.phone else ''}", ""]
    )
    reply = [business.email] if business.email else []
    day = row.visit.finished_at.astimezone(business.zone) if row.visit.finished_at else row.made_at
    subject = f"Visit report: {row.visit.farm}, {day:%-d %B %Y}{version}"
    return EmailMessage(subject, text, None, [email], reply_to=reply)


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
