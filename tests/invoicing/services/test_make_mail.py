"""RFC 5322: one Message-ID for one message, 3.6.4; an answer goes to Reply-To, 3.6.2."""

from email import message_from_bytes
from email.policy import default

import pytest

from invoicing.domain.sending_states import SentPaper
from invoicing.models import Reminder
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.make_mail import PaperIsMissing, make_mail
from tests.factories import NOON
from tests.invoicing.issued_row import PDF, UBL, issued_row
from tests.invoicing.services.test_queue_sending import queue


def invoice_sending(house, *, has_xml=True, **changes):
    invoice = issued_row(house, has_xml=has_xml)
    return queue(house, paper=SentPaper.INVOICE, invoice=invoice, attachment=None, **changes)


def over_the_line(mail):
    return message_from_bytes(mail.message().as_bytes(), policy=default)


def papers(mail):
    return [(part.get_filename(), part.get_content_type()) for part in over_the_line(mail).iter_attachments()]


@pytest.fixture
def mail_settings(settings):
    settings.DEFAULT_FROM_EMAIL = "Site <money@trim.example>"
    settings.SITE_ADDRESS = "https://trim.example"


@pytest.mark.usefixtures("mail_settings")
def test_it_comes_from_the_business_at_our_address_and_is_answered_to_the_business(house):
    house.business.email = "office@ashrye.example"
    house.business.save()
    sending = invoice_sending(house)
    mail = make_mail(sending=sending, link=None)
    said = mail.message()
    assert said["From"] == "Ash & Rye Foot Trimming <money@trim.example>"
    assert (said["To"], said["Reply-To"]) == ("office@example.invalid", "office@ashrye.example")
    assert said["Message-ID"] == f"<{sending.message_id}@trim.example>"
    assert make_mail(sending=sending, link=None).message()["Message-ID"] == said["Message-ID"]


def test_the_xml_goes_along_only_on_wish_and_where_there_is_one(house):
    pdf, xml = ("INV-2026-0001.pdf", "application/pdf"), ("INV-2026-0001.xml", "application/xml")
    sending = invoice_sending(house)
    assert papers(make_mail(sending=sending, link=None)) == [pdf]
    sending.with_xml = True
    mail = make_mail(sending=sending, link=None)
    assert papers(mail) == [pdf, xml]
    assert [attached[1] for attached in mail.attachments] == [PDF, UBL]


def test_without_xml_the_pdf_goes_alone(house):
    sending = invoice_sending(house, has_xml=False, with_xml=True)
    assert papers(make_mail(sending=sending, link=None)) == [("INV-2026-0001.pdf", "application/pdf")]


@pytest.mark.usefixtures("mail_settings")
def test_the_link_stands_at_the_end_with_the_day_it_ends(house):
    sending = invoice_sending(house)
    link = make_invoice_link(invoice=sending.invoice, at=NOON)
    mail = make_mail(sending=sending, link=link)
    assert link.address.startswith("https://trim.example/bill/")
    assert mail.body.startswith("Attached.\n\nWhat it is for, how to pay it")
    assert f"until 31 May 2026:\n\n{link.address}\n\n" in mail.body
    assert link.address not in sending.body


def test_a_reminder_brings_the_invoice_along(house):
    invoice = issued_row(house)
    reminder = Reminder.objects.create(
        business=house.business, invoice=invoice, step=1, proposed_at=NOON, pdf=b"%PDF reminder"
    )
    asked = {"paper": SentPaper.REMINDER, "invoice": invoice, "reminder": reminder, "attachment": None}
    names = [name for name, _ in papers(make_mail(sending=queue(house, **asked), link=None))]
    assert names == ["reminder-INV-2026-0001.pdf", "INV-2026-0001.pdf"]


def test_a_statement_is_the_paper_that_was_handed_in(house):
    assert papers(make_mail(sending=queue(house), link=None)) == [("account.pdf", "application/pdf")]


def test_a_paper_that_is_not_there_is_not_passed_over(house):
    sending = queue(house)
    sending.attachment = None
    with pytest.raises(PaperIsMissing):
        make_mail(sending=sending, link=None)
