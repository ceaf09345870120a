"""What a mail with a paper of the money says and brings."""

import pytest

from invoicing.domain.sent_papers import SentPaper
from invoicing.models import Reminder
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.make_mail import MailPaper, NothingToSend, mail_papers, mail_text
from tests.factories import NOON
from tests.invoicing.issued_row import PDF, UBL, issued_row

INVOICE_PDF = ("INV-2026-0001.pdf", "application/pdf", PDF)


def papers(*asked, **told):
    return [(part.name, part.media_type, part.content) for part in mail_papers(MailPaper(*asked, **told))]


def test_the_xml_goes_along_only_on_wish_and_where_there_is_one(house):
    invoice = issued_row(house)
    assert papers(SentPaper.INVOICE, invoice) == [INVOICE_PDF]
    with_xml = papers(SentPaper.INVOICE, invoice, with_xml=True)
    assert with_xml == [INVOICE_PDF, ("INV-2026-0001.xml", "application/xml", UBL)]


def test_without_xml_the_pdf_goes_alone(house):
    invoice = issued_row(house, has_xml=False)
    assert papers(SentPaper.INVOICE, invoice, with_xml=True) == [INVOICE_PDF]


def test_the_link_stands_at_the_end_with_the_day_it_ends(house):
    link = make_invoice_link(invoice=issued_row(house), at=NOON).row
    text = mail_text("Attached.", link)
    assert text.startswith("Attached.\n\nWhat it is for, how to pay it")
    assert "until 31 May 2026:\n\n{secret}\n\n" in text
    assert mail_text("Attached.", None) == "Attached.\n"


def test_a_reminder_brings_the_invoice_along(house):
    invoice = issued_row(house)
    reminder = Reminder.objects.create(
        business=house.business, invoice=invoice, step=1, proposed_at=NOON, pdf=b"%PDF reminder"
    )
    found = papers(SentPaper.REMINDER, invoice, reminder)
    assert found == [("reminder-INV-2026-0001.pdf", "application/pdf", b"%PDF reminder"), INVOICE_PDF]


def test_a_statement_is_the_paper_that_was_handed_in():
    found = papers(SentPaper.STATEMENT, attachment=PDF, attachment_name="account.pdf")
    assert found == [("account.pdf", "application/pdf", PDF)]


def test_a_paper_that_is_not_there_is_not_passed_over():
    with pytest.raises(NothingToSend):
        mail_papers(MailPaper(SentPaper.STATEMENT))
