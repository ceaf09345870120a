import pytest
from django.template import Context, Template

from invoicing.domain.sent_papers import SentPaper
from invoicing.services.make_mail import MailPaper
from tests.factories import make_house
from tests.invoicing.issued_row import issued_row
from tests.invoicing.services.test_queue_sending import queue


@pytest.mark.django_db
def test_an_invoice_shows_its_mails():
    house = make_house()
    invoice = issued_row(house)
    page = Template("{% load mail_told %}{% mails_of invoice %}")
    assert page.render(Context({"invoice": invoice})).strip() == ""
    queue(house, paper=MailPaper(SentPaper.INVOICE, invoice), address="who@example.invalid")
    queue(
        house, paper=MailPaper(SentPaper.INVOICE, issued_row(house, "INV-2")), address="other@example.invalid"
    )
    shown = page.render(Context({"invoice": invoice}))
    assert "who@example.invalid" in shown
    assert "Waiting to go" in shown
    assert "other@" not in shown
