"""Payments, accounts and what settles an invoice, over the API."""

from decimal import Decimal

import pytest

from invoicing.models import Payment
from tests.invoicing.api.conftest import refusal
from tests.invoicing.issued_papers import credited, issued

WHY = {"because": "Noted twice"}


@pytest.fixture
def bills(house):
    return [issued(house.farm, amount) for amount in ("10.00", "30.00")]


@pytest.fixture
def pay(ask, house):
    def pay(amount, *shares, **more):
        told = [{"invoice": bill.pk, "amount": part} for bill, part in shares]
        money = {"farm": house.farm.pk, "received_on": "2026-03-02", "amount": amount, "method": "bank"}
        return ask("POST", "/payments/", {**money, "shares": told, **more})

    return pay


def test_money_is_noted_and_set_against_invoices(ask, bills, pay):
    made = pay("25.00", (bills[0], "10.00"), (bills[1], "5.00"), reference="RF")
    told = made.json()
    assert (made.status_code, told["rest"], [part["amount"] for part in told["parts"]]) == (
        *(201, "10.00"),
        ["10.00", "5.00"],
    )
    assert ask("GET", f"/invoices/{bills[0].pk}/").json()["paid"] == "paid"
    (listed,) = ask("GET", "/payments/?has_rest=true&reference=rf").json()["items"]
    assert (listed["id"], listed["rest"]) == (told["id"], "10.00")
    assert ask("GET", "/payments/?has_rest=false").json()["items"] == []


def test_a_share_that_does_not_fit_keeps_nothing(ask, house, bills, pay):
    refused = pay("25.00", (bills[0], "10.01"))
    assert refusal(refused) == (409, "cannot_settle")
    assert bills[0].number in refused.json()["detail"]
    assert refusal(pay("25.00", (bills[0], "1"), (bills[0], "2"))) == (422, "cannot_be_meant")
    assert refusal(pay("0")) == (422, "cannot_be_meant")
    assert refusal(pay("1", received_on="2100-01-01")) == (409, "payment_refused")
    assert not Payment.objects.within(house.scope).exists()


def test_a_rest_is_used_and_the_payment_taken_back(ask, bills, pay):
    payment = pay("25.00").json()["id"]
    told = {"shares": [{"invoice": bills[1].pk, "amount": "20.00"}]}
    assert ask("POST", f"/payments/{payment}/set-against/", told).json()["rest"] == "5.00"
    (part,) = ask("GET", f"/payments/{payment}/").json()["parts"]
    undone = ask("POST", f"/allocations/{part['id']}/undo/", WHY).json()
    assert (undone["open_amount"], undone["settled_by"][0]["undone_because"]) == ("30.00", "Noted twice")
    back = ask("POST", f"/payments/{payment}/take-back/", WHY).json()
    assert (back["taken_back_because"], back["rest"]) == ("Noted twice", "0.00")
    assert [row["id"] for row in ask("GET", "/payments/?is_taken_back=true").json()["items"]] == [payment]


def test_a_rest_goes_back_to_the_farm(ask, pay):
    payment = pay("25.00").json()["id"]
    money = {"paid_on": "2026-03-03", "amount": "25.01", "method": "bank"}
    assert refusal(ask("POST", f"/payments/{payment}/pay-back/", money)) == (409, "cannot_pay_back")
    back = ask("POST", f"/payments/{payment}/pay-back/", {**money, "amount": "25"}).json()
    assert (back["amount"], back["pays_back"], back["rest"]) == ("-25.00", payment, "0.00")
    assert refusal(ask("POST", f"/payments/{payment}/take-back/", WHY)) == (409, "cannot_take_back")


def test_a_credit_note_is_set_off_and_its_rest_paid_back(ask, bills):
    note = credited(bills[0], "12.00")
    off = ask("POST", f"/invoices/{note.pk}/set-off/", {"invoice": bills[1].pk, "amount": "5.00"})
    assert (off.status_code, off.json()["kind"], off.json()["amount"]) == (201, "credit", "5.00")
    money = {"paid_on": "2026-03-03", "amount": "7.00", "method": "cash"}
    assert ask("POST", f"/invoices/{note.pk}/pay-back/", money).json()["amount"] == "-7.00"
    assert ask("GET", f"/invoices/{note.pk}/").json()["open_amount"] == "0.00"
    assert refusal(ask("POST", f"/invoices/{note.pk}/set-off/", {"invoice": bills[1].pk})) == (
        409,
        "cannot_set_off",
    )


def test_what_will_not_be_paid_is_written_off(ask, bills):
    at = f"/invoices/{bills[1].pk}"
    told = {"amount": "30.01", "reason": "The farm is sold"}
    assert refusal(ask("POST", f"{at}/write-off/", told)) == (409, "cannot_write_off")
    made = ask("POST", f"{at}/write-off/", {"reason": "The farm is sold"}).json()
    assert (made["kind"], made["amount"], made["reason"]) == ("write_off", "30.00", "The farm is sold")
    assert ask("GET", f"{at}/").json()["paid"] == "paid"


def test_the_account_tells_every_move_with_what_is_owed_after_it(ask, house, bills, pay):
    payment = pay("15.00").json()["id"]
    at = f"/farms/{house.farm.pk}"
    told = ask("GET", f"{at}/account/?first=2026-01-01&last=2026-12-31").json()
    assert [line["balance"] for line in told["lines"]] == ["10.00", "40.00", "25.00"]
    assert (told["lines"][-1]["payment"], told["lines"][-1]["invoice"]) == (payment, None)
    assert Decimal(told["closing"]) == 25
    pdf = ask("GET", f"{at}/statement.pdf?first=2026-01-01&last=2026-12-31")
    assert (pdf["Content-Type"], pdf.content[:4]) == ("application/pdf", b"%PDF")
    turned = ask("GET", f"{at}/account/?first=2026-03-02&last=2026-03-01")
    assert refusal(turned) == (422, "cannot_be_meant")
    days = {"first": "2026-01-01", "last": "2026-03-31"}
    assert refusal(ask("POST", f"{at}/send-statement/", days)) == (409, "no_address")
    owed = ask("GET", "/owed/").json()
    assert (owed["total"], owed["overdue"], owed["unused"]) == ("40.00", "40.00", "15.00")
    assert owed["debtors"][0]["ages"]["over_90"] == "40.00"
