"""How an invoice was settled, on its page."""

from django.urls import reverse

from invoicing.models import Allocation
from tests.factories import make_house
from tests.invoicing.issued_papers import credited, issued


def test_an_invoice_is_written_off_and_that_is_undone(house, office):
    bill = issued(house.farm, "60")
    url = reverse("invoice_settled", args=[bill.pk])
    assert "£60.00 of" in office.get(url).content.decode()
    assert office.post(url, {"amount": "61", "reason": "Given up"}).status_code == 400
    office.post(url, {"amount": "60", "reason": "Given up"})
    page = office.get(url).content.decode()
    assert "is settled" in page
    assert "Given up" in page
    part = Allocation.objects.within(house.scope).get()
    assert office.post(reverse("settled_undo", args=[part.pk]), {"because": ""}).status_code == 400
    office.post(reverse("settled_undo", args=[part.pk]), {"because": "They paid after all"})
    bill.refresh_from_db()
    assert bill.is_open
    assert "They paid after all" in office.get(url).content.decode()


def test_a_credit_note_is_set_off_and_the_rest_paid_back(house, office):
    bill = issued(house.farm, "60")
    note = credited(bill, "80")
    url = reverse("invoice_settled", args=[note.pk])
    assert f"Set off against {bill.number}" in office.get(url).content.decode()
    office.post(reverse("invoice_set_off", args=[note.pk, bill.pk]))
    note.refresh_from_db()
    assert note.open_amount == 20
    told = {"amount": "20", "paid_on": "2026-02-20", "method": "bank", "note": ""}
    assert office.post(url, {**told, "amount": "21"}).status_code == 400
    office.post(url, told)
    note.refresh_from_db()
    assert not note.is_open
    assert "Paid back" in office.get(url).content.decode()


def test_another_business_sees_none_of_it(house, office):
    theirs = make_house("Fell & Beck")
    bill = issued(theirs.farm, "60")
    url = reverse("invoice_settled", args=[bill.pk])
    assert office.get(url).status_code == 404
    assert office.post(url, {"amount": "60", "reason": "x"}).status_code == 404
    assert office.post(reverse("invoice_set_off", args=[bill.pk, bill.pk])).status_code == 404
