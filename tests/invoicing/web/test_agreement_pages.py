import pytest
from django.urls import reverse

from invoicing.models import Agreement
from tests.factories import make_house

pytestmark = pytest.mark.django_db
TOLD = {
    "kind": "price",
    "amount": "11,50",
    "item": "functional",
    "why": "Since long",
    "valid_from": "2026-01-01",
}


def test_something_is_agreed_and_ends(office, house):
    page = reverse("agreements", args=[house.farm.pk])
    assert "pays the prices of the list" in office.get(page).text
    assert office.post(page, TOLD).status_code == 302
    assert "£11.50" in office.get(page).text
    row = Agreement.objects.within(house.scope).get()
    assert office.post(reverse("agreement_end", args=[row.pk])).status_code == 302
    row.refresh_from_db()
    assert row.valid_until is not None
    assert "over" in office.get(page).text


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"kind": "percent", "amount": "120"}, "amount"),
        ({"item": ""}, "item"),
        ({"valid_until": "2025-01-01"}, "valid_until"),
        ({"why": ""}, "why"),
    ],
)
def test_what_makes_no_sense_is_said_at_its_field(office, house, changes, field):
    answer = office.post(reverse("agreements", args=[house.farm.pk]), {**TOLD, **changes})
    assert answer.status_code == 400
    assert field in answer.context["form"].errors


def test_the_farm_of_another_business_is_not_there(office):
    far = make_house("Elsewhere").farm
    assert office.post(reverse("agreements", args=[far.pk]), TOLD).status_code == 404
