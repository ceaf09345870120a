from datetime import date
from decimal import Decimal

import pytest
from django.urls import reverse

from invoicing.domain.pricing import PriceItem
from invoicing.models import Price, PriceList, TravelBand
from tests.factories import make_house, make_prices
from tests.invoicing.services.price_sheets import rate

pytestmark = pytest.mark.django_db
TOLD = {
    "name": "Spring",
    "valid_from": "2027-03-01",
    "step_rule": "whole",
    "travel_rule": "band",
    "travel_unit": "KMT",
    "bands": "10: 8,50\nbeyond: 40",
    "usual_weekdays": ["1", "2", "3"],
    "functional-price": "13,50",
    "functional-steps": "21: 12.00",
    "call_out-price": "35",
    "minimum": "80",
}


def test_the_first_list_wants_a_tax_rate_then_is_kept_as_typed(office, house):
    assert "First add a tax rate" in office.get(reverse("prices")).text
    rate(house.business)
    assert office.post(reverse("price_list_new"), TOLD).status_code == 302
    row = PriceList.objects.within(house.scope).get()
    steps = (
        Price.objects.within(house.scope).filter(item="functional").values_list("from_quantity", "unit_price")
    )
    assert list(steps) == [(1, Decimal("13.5")), (21, Decimal(12))]
    assert list(TravelBand.objects.within(house.scope).values_list("price", flat=True)) == [
        Decimal("8.5"),
        40,
    ]
    assert (row.minimum_charge, row.usual_weekdays, row.guarantee_days) == (80, "123", 0)
    page = office.get(reverse("prices")).text
    assert "£13.50" in page
    assert "beyond: £40.00" in page
    assert office.get(reverse("price_list", args=[row.pk])).context["form"]["bands"].value() == (
        "10: 8.50\nbeyond: 40.00"
    )


def test_a_new_list_begins_as_a_copy_and_the_page_says_what_changed(office, house):
    make_prices(house.business, functional="12")
    form = office.get(reverse("price_list_new")).context["form"]
    assert form["functional-price"].value() == "12.00"
    assert form["dressing-tax"].value() == "low"
    assert office.post(reverse("price_list_new"), {**TOLD, "functional-tax": "low"}).status_code == 302
    page = office.get(reverse("prices"))
    row = page.context["lists"][0].prices[0]
    assert (row.label, row.change, row.tax) == ("Functional trim", Decimal("12.5"), "low, 5 %")
    assert "+12.5 %" in page.text


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"functional-price": "1,350"}, "functional-price"),
        ({"functional-price": "-1"}, "functional-price"),
        ({"functional-steps": "1: 12"}, "functional-steps"),
        ({"functional-price": ""}, "functional-price"),
        ({"bands": "beyond"}, "bands"),
        ({"bands": ""}, "travel_rule"),
        ({"travel_rule": "shared"}, "travel_rule"),
        ({"usual_from": "18:00", "usual_until": "07:00"}, "usual_until"),
        ({"valid_from": "2026-01-01"}, "valid_from"),
        ({"usual_weekdays": []}, "usual_weekdays"),
    ],
)
def test_what_cannot_be_kept_is_said_at_its_field(office, house, changes, field):
    make_prices(house.business)
    answer = office.post(reverse("price_list_new"), {**TOLD, **changes})
    assert answer.status_code == 400
    assert field in answer.context["form"].errors
    assert PriceList.objects.within(house.scope).count() == 1


def test_a_mile_or_a_kilometre_as_the_list_measures(office, house):
    rate(house.business)
    told = {**TOLD, "travel_rule": "distance", "travel_unit": "SMI", "distance-price": "0.70"}
    assert office.post(reverse("price_list_new"), told).status_code == 302
    assert Price.objects.within(house.scope).filter(item=PriceItem.MILE, unit_price=Decimal("0.7")).exists()
    row = PriceList.objects.within(house.scope).get()
    assert (
        office.get(reverse("price_list", args=[row.pk])).context["form"]["distance-price"].value() == "0.70"
    )


def test_a_list_nobody_was_billed_at_is_mended_or_taken_off(office, house):
    row = make_prices(house.business)
    assert office.post(reverse("price_list", args=[row.pk]), TOLD).status_code == 302
    row.refresh_from_db()
    assert (row.name, row.valid_from) == ("Spring", date(2027, 3, 1))
    office.post(reverse("price_list_drop", args=[row.pk]))
    assert not PriceList.objects.within(house.scope).exists()


def test_the_list_of_another_business_is_not_there(office):
    far = make_prices(make_house("Elsewhere").business)
    assert office.post(reverse("price_list", args=[far.pk]), TOLD).status_code == 404
    assert office.post(reverse("price_list_drop", args=[far.pk])).status_code == 404
