"""Credit notes, links and mails of an issued invoice over the API."""

import pytest

from invoicing.models import InvoiceLink
from tests.factories import make_prices
from tests.invoicing.api.conftest import refusal
from tests.invoicing.drafts import draft, issue, plain_draft
from trimops.api.models import RepeatableCall


@pytest.fixture
def bill(house):
    make_prices(house.business)
    return issue(draft(house), house)


def test_a_part_is_credited_and_then_the_rest(ask, bill):
    left = ask("GET", f"/invoices/{bill.pk}/credit-left/").json()["lines"]
    assert [line["net"] for line in left] == ["10.00", "10.00", "10.00"]
    one = {"reason": "A cow counted twice", "lines": [{"line": left[0]["line"], "amount": "4.00"}]}
    note = ask("POST", f"/invoices/{bill.pk}/credit/", one)
    assert (note.status_code, note.json()["kind"], note.json()["net"]) == (201, "credit_note", "4.00")
    assert note.json()["corrects"] == bill.pk
    rest = ask("POST", f"/invoices/{bill.pk}/credit/", {"reason": "All of it"}).json()
    assert rest["net"] == "26.00"
    assert refusal(ask("POST", f"/invoices/{bill.pk}/credit/", {"reason": "More"})) == (409, "cannot_credit")
    ask("POST", f"/drafts/{rest['id']}/issue/", {})
    assert ask("GET", f"/invoices/{bill.pk}/").json()["credit_notes"] == [rest["id"]]


@pytest.mark.parametrize(
    "lines", [[], [{"amount": "1", "quantity": "1"}], [{"amount": "1"}, {"amount": "2"}]], ids=str
)
def test_what_of_a_line_is_credited_is_said_once(ask, bill, lines):
    key = bill.lines.within(bill.scope).first().pk
    told = {"reason": "Why", "lines": [{"line": key, **line} for line in lines]}
    assert refusal(ask("POST", f"/invoices/{bill.pk}/credit/", told)) in (
        (422, "cannot_be_meant"),
        (400, "malformed"),
    )


def test_a_links_address_is_told_once_and_kept_nowhere(ask, house, bill):
    made = ask("POST", f"/invoices/{bill.pk}/links/", Idempotency_Key="once")
    address = made.json()["address"]
    assert (made.status_code, made["Cache-Control"]) == (201, "no-store")
    assert address.startswith("http://")
    again = ask("POST", f"/invoices/{bill.pk}/links/", Idempotency_Key="once").json()
    assert (again["id"], again["address"]) == (made.json()["id"], None)
    secret = address.rstrip("/").rpartition("/")[2]
    kept = RepeatableCall.objects.within(house.scope).values_list("body", "headers")
    assert secret not in str(list(kept))
    (link,) = ask("GET", f"/invoices/{bill.pk}/links/").json()["items"]
    assert "address" not in link
    assert ask("POST", f"/invoice-links/{link['id']}/close/").json()["closed_at"]
    assert not InvoiceLink.objects.within(house.scope).get().is_alive(bill.issued_at)


def test_a_draft_has_no_link_and_goes_to_nobody(ask, house):
    at = f"/invoices/{plain_draft(house).pk}"
    assert refusal(ask("POST", f"{at}/links/")) == (409, "not_issued_yet")
    assert refusal(ask("POST", f"{at}/send/", {})) == (409, "not_issued_yet")
    assert refusal(ask("GET", f"{at}/send/")) == (409, "not_issued_yet")


def test_an_invoice_goes_to_each_address_once(ask, house, bill):
    mail = ask("GET", f"/invoices/{bill.pk}/send/").json()
    assert (bill.number in mail["subject"], mail["addresses"]) == (True, [])
    assert refusal(ask("POST", f"/invoices/{bill.pk}/send/", {})) == (409, "no_address")
    to = {"addresses": ["farm@farm.example", "FARM@farm.example"], "with_link": False}
    sent = ask("POST", f"/invoices/{bill.pk}/send/", to).json()["mails"]
    assert {mail["id"] for mail in sent} == {sent[0]["id"]}
    (listed,) = ask("GET", f"/money-mails/?invoice={bill.pk}").json()["items"]
    assert (listed["id"], listed["paper"], listed["address"]) == (
        sent[0]["id"],
        "invoice",
        "farm@farm.example",
    )
    assert ask("GET", f"/money-mails/{listed['id']}/").json() == listed
    assert ask("GET", f"/money-mails/?farm={house.farm.pk}&paper=reminder").json()["items"] == []
