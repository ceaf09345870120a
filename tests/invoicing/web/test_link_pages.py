"""What a stranger with the link sees, and what one without it does not."""

import logging
from datetime import timedelta
from html import unescape

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from farms.models import Farm
from invoicing.models import Invoice, InvoiceLink
from invoicing.services.make_invoice_link import make_invoice_link
from tests.invoicing.issued_row import CII, PDF, UBL, issued_row


@pytest.fixture
def house(house):
    house.business.phone, house.business.email = "01632 960 777", "office@ashrye.example"
    house.business.save()
    return house


@pytest.fixture
def invoice(house):
    today = timezone.now().date()
    return issued_row(house, issued_on=today, due_on=today + timedelta(days=30))


def secret_to(invoice, at=None):
    made = make_invoice_link(invoice=invoice, at=at or timezone.now())
    return made.address.rstrip("/").rpartition("/")[2]


def page(secret):
    answer = Client().get(reverse("invoice_by_link", args=[secret]))
    assert answer.status_code == 200
    return unescape(answer.content.decode())


def test_it_says_how_much_how_to_pay_and_whom_to_ring(invoice):
    shown = page(secret_to(invoice))
    assert "£120.00 to pay by" in shown
    for word in ("GB33 BUKB 2020 1555 5555 55", "RF18539007547034", "Functional trim", "01632 960 777"):
        assert word in shown
    assert 'href="mailto:office@ashrye.example"' in shown


def test_of_an_invoice_paid_in_part_it_asks_for_the_rest_and_of_a_paid_one_for_nothing(invoice):
    rows = Invoice.objects.within(invoice.scope)
    rows.filter(pk=invoice.pk).update(settled=20)
    shown = page(secret_to(invoice))
    assert "£100.00 to pay by" in shown
    assert "£20.00 of it is paid or set off" in shown
    rows.filter(pk=invoice.pk).update(settled=120, is_open=False)
    shown = page(secret_to(invoice))
    assert "Invoice INV-2026-0001 is paid" in shown
    assert "How to pay" not in shown


def test_a_credit_note_asks_for_nothing_and_says_why(house, invoice):
    note = issued_row(
        house, "CN-2026-0001", gross="12", kind="credit_note", corrects=invoice, reason="Two too many"
    )
    shown = page(secret_to(note))
    assert "£12.00 credited by Ash & Rye Foot Trimming" in shown
    assert "On invoice INV-2026-0001: Two too many" in shown
    assert "How to pay" not in shown
    assert "CN-2026-0001" in page(secret_to(invoice))


def test_the_papers_are_those_that_were_kept(invoice):
    secret = secret_to(invoice)
    kept = [("invoice_by_link_pdf", [], PDF), ("invoice_by_link_xml", ["ubl"], UBL)]
    kept += [("invoice_by_link_xml", ["cii"], CII)]
    for name, more, content in kept:
        answer = Client().get(reverse(name, args=[secret, *more]))
        assert (answer.status_code, answer.content) == (200, content)
    assert Client().get(reverse("invoice_by_link_xml", args=[secret, "pdf"])).status_code == 404


def test_without_xml_none_is_offered(house):
    secret = secret_to(issued_row(house, has_xml=False))
    assert "XML" not in page(secret)
    assert Client().get(reverse("invoice_by_link_xml", args=[secret, "ubl"])).status_code == 404


def test_no_answer_is_kept_handed_on_or_found(invoice):
    secret = secret_to(invoice)
    for path in (
        reverse("invoice_by_link", args=[secret]),
        reverse("invoice_by_link_pdf", args=[secret]),
        reverse("invoice_by_link", args=["nonsense"]),
    ):
        answer = Client().get(path)
        assert answer["Cache-Control"] == "private, no-store"
        assert answer["Referrer-Policy"] == "no-referrer"
        assert "noindex" in answer["X-Robots-Tag"]
        assert not answer.cookies


def test_ended_closed_erased_and_made_up_links_answer_alike(house, invoice):
    secrets = [secret_to(invoice, timezone.now() - timedelta(days=91)), secret_to(invoice), "x" * 43]
    InvoiceLink.objects.within(house.scope).order_by("-pk").filter(expires_at__gt=timezone.now()).update(
        closed_at=timezone.now()
    )
    answers = [Client().get(reverse("invoice_by_link", args=[secret])) for secret in secrets]
    living = secret_to(invoice)
    Farm.objects.within(house.scope).update(erased_at=timezone.now())
    answers.append(Client().get(reverse("invoice_by_link", args=[living])))
    assert {answer.status_code for answer in answers} == {404}
    assert len({answer.content for answer in answers}) == 1
    for name, more in (("invoice_by_link_pdf", []), ("invoice_by_link_xml", ["ubl"])):
        assert Client().get(reverse(name, args=[living, *more])).status_code == 404


def test_one_link_opens_no_other_invoice_and_takes_no_writing(house, invoice):
    issued_row(house, "INV-2026-0002", gross="987")
    secret = secret_to(invoice)
    assert "987" not in page(secret)
    assert Client().post(reverse("invoice_by_link", args=[secret])).status_code == 405


def test_the_secret_stands_in_no_log(invoice, caplog):
    secret = secret_to(invoice)
    caplog.set_level(logging.DEBUG)
    page(secret)
    Client().get(reverse("invoice_by_link_xml", args=[secret, "nonsense"]))
    Client().post(reverse("invoice_by_link", args=[secret]))
    assert secret not in caplog.text


def test_that_it_was_opened_is_noted(house, invoice):
    secret = secret_to(invoice)
    page(secret)
    link = InvoiceLink.objects.within(house.scope).get()
    assert timezone.now() - link.opened_at < timedelta(minutes=1)
