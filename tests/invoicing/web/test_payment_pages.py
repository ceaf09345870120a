"""Payments on the pages of the office."""

from decimal import Decimal

import pytest
from django.urls import reverse

from invoicing.models import Allocation, Payment
from invoicing.selectors.payment_rest import payment_rest
from tests.factories import make_house
from tests.invoicing.issued_papers import issued
from tests.invoicing.services.test_note_payment import note
from trimops.tenancy.unscoped import unscoped


def fields(**more):
    return {
        "amount": "100",
        "received_on": "2026-02-20",
        "method": "cash",
        "reference": "",
        "note": "",
        **more,
    }


def new_url(house, bill=None):
    return f"{reverse('payment_new')}?farm={house.farm.pk}" + (f"&invoice={bill.pk}" if bill else "")


def test_a_payment_is_shared_out_the_oldest_first_and_then_noted(house, office):
    bills = [issued(house.farm, "60"), issued(house.farm, "70")]
    asked = office.post(new_url(house), fields(act="share"))
    shares = {row.row.key: Decimal(row.field.value()) for row in asked.context["form"].share_rows}
    assert shares == {bills[0].pk: 60, bills[1].pk: 40}
    assert not Payment.objects.within(house.scope).exists()
    told = {f"share_{key}": str(share) for key, share in shares.items()}
    answer = office.post(new_url(house), fields(act="note", **told))
    payment = Payment.objects.within(house.scope).get()
    assert answer.url == reverse("payment", args=[payment.pk])
    assert payment.noted_by == house.office
    bills[1].refresh_from_db()
    assert bills[1].open_amount == 30


def test_from_an_invoice_the_amount_stands_there_already(house, office):
    bill = issued(house.farm, "60")
    page = office.get(new_url(house, bill))
    assert page.context["form"]["amount"].value() == "60.00"
    assert "owes £60.00 on 1 invoice" in page.content.decode()


@pytest.mark.parametrize(
    "wrong", [{"amount": "0"}, {"received_on": ""}, {"amount": "12.345"}, {"share": "70"}]
)
def test_what_cannot_be_is_told_on_the_page(house, office, wrong):
    bill = issued(house.farm, "60")
    told = {f"share_{bill.pk}": wrong.pop("share", "")}
    answer = office.post(new_url(house), fields(act="note", **told) | wrong)
    assert answer.status_code == 400
    assert "to mend" in answer.content.decode()


def test_the_rest_is_used_undone_paid_back_and_the_payment_taken_back(house, office):
    payment, bill = note(house, "100"), issued(house.farm, "60")
    office.post(reverse("payment", args=[payment.pk]), {f"share_{bill.pk}": "60"})
    assert payment_rest(payment) == 40
    part = Allocation.objects.within(house.scope).get()
    assert office.get(reverse("settled_undo", args=[part.pk])).status_code == 200
    office.post(reverse("settled_undo", args=[part.pk]), {"because": "Wrong invoice"})
    assert payment_rest(payment) == 100
    told = {"amount": "30", "paid_on": "2026-02-21", "method": "bank", "note": ""}
    assert (
        office.post(reverse("payment_pay_back", args=[payment.pk]), {**told, "amount": "101"}).status_code
        == 400
    )
    office.post(reverse("payment_pay_back", args=[payment.pk]), told)
    assert payment_rest(payment) == 70
    back = Payment.objects.within(house.scope).get(amount__lt=0)
    first = office.post(reverse("payment_take_back", args=[payment.pk]), {"because": "Bounced"})
    assert (first.status_code, "paid back from this" in first.content.decode()) == (400, True)
    for one in (back, payment):
        office.post(reverse("payment_take_back", args=[one.pk]), {"because": "Bounced"})
        one.refresh_from_db()
        assert one.taken_back_at
    assert "Bounced" in office.get(reverse("payment", args=[payment.pk])).content.decode()


@pytest.mark.parametrize("show", ["all", "rest", "cash", "out", "taken_back", "nonsense"])
def test_the_list_by_kind(house, office, show):
    note(house, "100")
    page = office.get(f"{reverse('payments')}?show={show}&q=croft")
    assert page.status_code == 200
    assert len(page.context["page"]) == (0 if show in ("out", "taken_back") else 1)


def test_the_farm_is_found_by_its_name(house, office):
    assert "Low Croft" in office.get(f"{reverse('payment_new')}?q=low").content.decode()
    assert "No farm has that" in office.get(f"{reverse('payment_new')}?q=zz").content.decode()
    assert office.get(f"{reverse('payment_new')}?farm=999999").status_code == 404


def test_another_business_sees_none_of_it(house, office):
    theirs = make_house("Fell & Beck")
    payment = note(theirs, "10")
    for name in ("payment", "payment_take_back", "payment_pay_back"):
        assert office.get(reverse(name, args=[payment.pk])).status_code == 404
        assert office.post(reverse(name, args=[payment.pk]), {"because": "x"}).status_code == 404
    with unscoped("the test looks"):
        assert Payment.objects.get(pk=payment.pk).taken_back_at is None
    assert payment.amount == Decimal(10)


def test_an_amount_beside_an_invoice_that_was_settled_meanwhile_is_told_and_not_dropped(house, office):
    bill = issued(house.farm, "60")
    payment = note(house, "60", {bill.pk: Decimal(60)})
    answer = office.post(new_url(house), fields(act="note", **{f"share_{bill.pk}": "60"}))
    assert answer.status_code == 400
    assert "is not open any more" in answer.content.decode()
    assert Payment.objects.within(house.scope).get() == payment


def test_a_rest_that_somebody_used_meanwhile_is_told_though_nothing_is_open(house, office):
    bill = issued(house.farm, "60")
    payment = note(house, "60", {bill.pk: Decimal(60)})
    answer = office.post(reverse("payment", args=[payment.pk]), {f"share_{bill.pk}": "60"})
    assert answer.status_code == 400
    words = answer.content.decode()
    assert "is not open any more" in words
    assert "all of it used" in words
