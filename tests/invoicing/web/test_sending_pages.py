"""The mail before it goes, what became of it, and links: for the office of the same business alone."""

from html import unescape

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from invoicing.domain.sent_papers import SentPaper
from invoicing.models import InvoiceLink, Sending
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.make_mail import MailPaper
from tests.factories import make_house
from tests.invoicing.issued_row import issued_row
from tests.invoicing.services.test_queue_sending import queue
from tests.trimops.outbox.messages import put


@pytest.fixture
def house(house):
    house.farm.email = "farm@example.invalid"
    house.farm.save()
    return house


@pytest.fixture
def invoice(house):
    return issued_row(house)


def page(client, name, *keys, **query):
    return unescape(client.get(reverse(name, args=keys), query).content.decode())


def send_form(**changes):
    form = {"addresses": ["farm@example.invalid"], "subject": "Bill", "body": "Hello.", "with_link": "on"}
    return {**form, **changes}


def bill(house, invoice, **changes):
    return queue(house, paper=MailPaper(SentPaper.INVOICE, invoice), **changes)


def rows_of(house):
    return list(Sending.objects.within(house.scope).order_by("pk"))


def test_the_mail_is_shown_before_it_goes(office, invoice):
    shown = page(office, "invoice_send", invoice.pk)
    assert "<h1>INV-2026-0001 goes to farm@example.invalid</h1>" in shown
    assert 'value="Invoice INV-2026-0001 from Ash & Rye Foot Trimming: £120.00, due 1 Apr 2026"' in shown
    assert "our invoice INV-2026-0001 for the work at Low Croft" in shown


def test_it_goes_as_it_was_written_to_whom_was_ticked_and_added(
    house, office, invoice, django_capture_on_commit_callbacks, mailoutbox
):
    form = send_form(others="two@example.invalid; three@example.invalid", with_xml="on")
    with django_capture_on_commit_callbacks(execute=True):
        answer = office.post(reverse("invoice_send", args=[invoice.pk]), form)
    assert answer["Location"] == reverse("invoice_send", args=[invoice.pk])
    assert [mail.to for mail in mailoutbox] == [
        [f"{who}@example.invalid"] for who in ("farm", "two", "three")
    ]
    assert {mail.subject for mail in mailoutbox} == {"Bill"}
    assert all(mail.body.startswith("Hello.\n\nWhat it is for") for mail in mailoutbox)
    assert [len(mail.attachments) for mail in mailoutbox] == [2, 2, 2]
    assert page(office, "invoice_send", invoice.pk).count("Only in the mail folder</span>") == 3


@pytest.mark.parametrize(
    "wrong", [{"addresses": []}, {"addresses": ["x@example.invalid"]}, {"subject": ""}, {"body": " "}]
)
def test_what_is_wrong_in_the_form_sends_nothing(house, office, invoice, wrong):
    answer = office.post(reverse("invoice_send", args=[invoice.pk]), send_form(**wrong))
    assert (answer.status_code, rows_of(house)) == (400, [])


def test_a_wrong_address_is_named(house, office, invoice):
    answer = office.post(reverse("invoice_send", args=[invoice.pk]), send_form(others="nobody"))
    assert (answer.status_code, rows_of(house)) == (400, [])
    html = unescape(answer.content.decode())
    assert "“nobody” is no e-mail address" in html
    assert "Hello." in html, "what was written is still there"


def test_without_an_address_or_an_xml_it_says_so(house, office):
    house.farm.email = ""
    house.farm.save()
    shown = page(office, "invoice_send", issued_row(house, has_xml=False).pk)
    assert "<h1>No address for Low Croft yet</h1>" in shown
    assert f'href="{reverse("farm_edit", args=[house.farm.pk])}"' in shown
    assert "there is no XML: The currency has three decimals." in shown
    assert "id_with_xml" not in shown


def test_a_draft_is_not_sent(house, office):
    draft = issued_row(house).__class__(business=house.business, farm=house.farm, currency="GBP")
    draft.drafted_at, draft.tax_point = timezone.now(), timezone.now().date()
    draft.save()
    assert office.get(reverse("invoice_send", args=[draft.pk])).status_code == 409


def test_the_list_begins_with_what_is_to_be_seen_to(house, office, invoice):
    assert "<h1>No mail was sent yet</h1>" in page(office, "sendings")
    stuck = bill(house, invoice, address="stuck@example.invalid").outgoing
    stuck.state, stuck.last_words = "failed", "550 5.1.1 no such person here"
    stuck.save()
    queue(house, address="waits@example.invalid")
    shown = page(office, "sendings")
    assert "<h1>1 mail did not go</h1>" in shown
    assert "550 5.1.1 no such person here" in shown
    assert f'href="{reverse("outgoing", args=[stuck.pk])}"' in shown
    assert "waits@" not in shown
    assert "waits@example.invalid" in page(office, "sendings", show="waiting")
    assert office.get(reverse("sendings"), {"show": "nonsense"}).status_code == 200


def test_without_a_mail_server_the_pages_say_that_mail_reaches_nobody(office, invoice, settings):
    for name, keys in (("sendings", []), ("invoice_send", [invoice.pk])):
        assert "No mail server is set" in page(office, name, *keys)
    settings.EMAIL_HOST = "mail.example.invalid"
    assert "No mail server is set" not in page(office, "sendings")


def test_an_old_address_of_a_mail_leads_to_where_it_stands_now(house, office):
    sending = queue(house)
    assert office.get(reverse("sending", args=[sending.pk]))["Location"] == reverse(
        "outgoing", args=[sending.outgoing_id]
    )


def test_from_the_mail_one_comes_to_its_paper(house, office, invoice):
    of_bill, of_account = bill(house, invoice).outgoing, queue(house).outgoing
    assert f'href="{reverse("sent_paper", args=[of_bill.pk])}"' in page(office, "outgoing", of_bill.pk)
    leads = [office.get(reverse("sent_paper", args=[mail.pk]))["Location"] for mail in (of_bill, of_account)]
    assert leads == [
        reverse("invoice_send", args=[invoice.pk]),
        reverse("farm_account", args=[house.farm.pk]),
    ]
    assert office.get(reverse("sent_paper", args=[put(house).pk])).status_code == 404


def test_a_link_is_shown_once_and_closed_on_a_press(house, office, invoice):
    made = office.post(reverse("invoice_links", args=[invoice.pk]))
    address = made.context["new_address"]
    assert made["Cache-Control"] == "no-store"
    assert address in made.content.decode()
    path = address.removeprefix("http://localhost:8000")
    assert Client().get(path).status_code == 200
    shown = page(office, "invoice_links", invoice.pk)
    assert "<h1>1 link opens INV-2026-0001</h1>" in shown
    assert "Last opened" in shown
    assert address not in shown
    office.post(reverse("invoice_link_close", args=[InvoiceLink.objects.within(house.scope).get().pk]))
    assert Client().get(path).status_code == 404


def test_another_businesss_mail_and_links_are_not_there(office):
    theirs = make_house("Far Side")
    invoice, sending = issued_row(theirs), queue(theirs)
    assert office.get(reverse("sent_paper", args=[sending.outgoing_id])).status_code == 404
    link = make_invoice_link(invoice=invoice, at=timezone.now()).row
    for name, key in (("invoice_send", invoice), ("sending", sending), ("invoice_links", invoice)):
        assert office.get(reverse(name, args=[key.pk])).status_code == 404
    assert office.post(reverse("invoice_link_close", args=[link.pk])).status_code == 404
