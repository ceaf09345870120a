"""What a hostile or careless hand sends is refused in words, never by a fault of the program."""

from decimal import Decimal

import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from invoicing.domain.discount import Discount
from invoicing.models import DocumentAmount, Invoice, InvoiceLine, MoneyRules
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.set_whole_amount import WholeChange, set_whole_amount
from invoicing.web.bank_forms import BankFileForm
from invoicing.web.rules_form import MoneyRulesForm
from tests.factories import NOON, make_prices
from tests.invoicing.services.billing import hand, worked


@pytest.fixture
def house(house):
    make_prices(house.business)
    return house


@pytest.fixture
def draft(house):
    return draft_invoice(visit=worked(house, 1), at=NOON)


LINE = {"description": "Extra", "quantity": "1", "unit_price": "5", "reason": "Asked for"}


@pytest.mark.parametrize(
    "said",
    [
        {"quantity": "9999999999"},
        {"quantity": "99999999", "unit_price": "9999999999"},
        {"unit_price": "9" * 5000},
        {"quantity": "0"},
        {"quantity": "NaN"},
        {"description": "a\x00b"},
        {"description": "x" * 300},
        {"tax": "987654321"},
    ],
)
def test_a_line_by_hand_that_no_paper_holds(house, office, draft, said):
    form = office.get(reverse("invoice_line_new", args=[draft.pk])).context["form"]
    tax = form.fields["tax"].choices[0][0]
    answer = office.post(reverse("invoice_line_new", args=[draft.pk]), {**LINE, "tax": tax, **said})
    assert answer.status_code in (400, 409)
    assert Invoice.objects.within(house.scope).get(pk=draft.pk).gross == draft.gross


def test_a_line_of_work_cannot_grow_beyond_all_measure(house, office, draft):
    line = InvoiceLine.objects.within(house.scope).filter(invoice=draft).first()
    said = {"description": line.description, "quantity": "9999999999", "reason": "Slip"}
    answer = office.post(reverse("invoice_line", args=[line.pk]), said)
    assert answer.status_code == 409
    assert "digits" in answer.content.decode()


def test_a_charge_on_the_whole_beyond_all_measure(office, draft):
    said = {"what": "charge", "percent": "9999999999", "reason": "Slip"}
    assert office.post(reverse("invoice_whole", args=[draft.pk]), said).status_code in (400, 409)


@pytest.mark.parametrize("name", ["books", "mileage"])
@pytest.mark.parametrize("day", ["0001-01-01", "9999-12-31"])
@pytest.mark.parametrize("kind", ["month", "quarter", "year", "free"])
def test_a_period_at_the_ends_of_time(office, name, day, kind):
    asked = {"kind": kind, "first": day, "last": day, "by": "issued"}
    assert office.get(reverse(name), asked).status_code == 200


@pytest.mark.parametrize("day", ["0001-01-01", "9999-12-31"])
@pytest.mark.parametrize("name", ["farm_account", "farm_statement"])
def test_an_account_at_the_ends_of_time(house, office, name, day):
    address = reverse(name, args=[house.farm.pk])
    for asked in ({"first": day}, {"last": day}):
        assert office.get(address, asked).status_code == 200


@pytest.mark.parametrize("key", ["\u00b2", "9" * 30, "-1", "x"])
def test_reminders_that_never_were(office, key):
    assert office.post(reverse("reminders_approve"), {"reminder": [key]}).status_code == 302


@pytest.mark.parametrize(
    "said",
    [
        {"days": "9" * 5000},
        {"days": "99999999999"},
        {"sums": "1000: " + "9" * 5000},
        {"sums": "1e99: 1"},
        {"interest_days_in_year": "0"},
        {"interest_days_in_year": "99999999"},
        {"account_name": "a\x00b"},
    ],
)
def test_rules_that_cannot_be_kept(house, office, said):
    form = office.get(reverse("money_rules")).context["form"]
    told = {field.html_name: field.value() for field in form if field.value() not in (None, False)}
    answer = office.post(reverse("money_rules"), {**told, **said})
    assert answer.status_code == 400
    assert not MoneyRules.objects.within(house.scope).exists()


def test_a_payment_of_the_year_26_is_a_slip(house, office):
    address = f"{reverse('payment_new')}?farm={house.farm.pk}"
    told = {"amount": "5", "received_on": "0026-03-02", "method": "cash"}
    answer = office.post(address, told)
    assert answer.status_code == 400
    assert "year" in answer.content.decode()


def test_a_file_too_large_is_refused_by_its_size_before_it_is_read(db):
    large, film = (
        SimpleUploadedFile("statement.csv", b"x"),
        SimpleUploadedFile("film.png", b"\x89PNG\r\n\x1a\n"),
    )
    large.size = film.size = 10**9
    statement = BankFileForm({}, {"file": large})
    rules = MoneyRulesForm({}, {"picture": film}, instance=MoneyRules())
    assert "larger than 5 MB" in statement.errors["file"][0]
    assert "larger than 500 kB" in rules.errors["picture"][0]


@pytest.mark.parametrize("name", ["payments", "payment_new", "invoice_issued"])
def test_a_search_for_nul(office, name):
    assert office.get(reverse(name), {"q": "a\0b"}).status_code == 200


def test_reasons_with_nul_are_no_reasons(house, office, draft):
    off = WholeChange(is_charge=False, discount=Discount(amount=Decimal(1)))
    set_whole_amount(invoice=draft, change=off, hand=hand(house))
    amount = DocumentAmount.objects.within(house.scope).get()
    assert office.post(reverse("invoice_whole_drop", args=[amount.pk]), {"reason": "a\0b"}).status_code == 409


@pytest.mark.parametrize("name", ["invoice", "payment", "bank_entry", "farm_account"])
def test_a_key_that_no_row_can_have(office, name):
    assert office.get(reverse(name, args=[10**30])).status_code == 404
