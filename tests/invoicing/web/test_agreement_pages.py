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


@pytest.fixture
def house(standing_house, db):
    return standing_house


@pytest.fixture
def desk(client, house):
    client.force_login(house.office)
    return client


def test_something_is_agreed_and_ends(desk, house):
    page = reverse("agreements", args=[house.farm.pk])
    assert "pays the prices of the list" in desk.get(page).text
    assert desk.post(page, TOLD).status_code == 302
    assert "£11.50" in desk.get(page).text
    row = Agreement.objects.within(house.scope).get()
    assert desk.post(reverse("agreement_end", args=[row.pk])).status_code == 302
    row.refresh_from_db()
    assert row.valid_until is not None
    assert "over" in desk.get(page).text


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"kind": "percent", "amount": "120"}, "amount"),
        ({"item": ""}, "item"),
        ({"valid_until": "2025-01-01"}, "valid_until"),
        ({"why": ""}, "why"),
    ],
)
def test_what_makes_no_sense_is_said_at_its_field(desk, house, changes, field):
    answer = desk.post(reverse("agreements", args=[house.farm.pk]), {**TOLD, **changes})
    assert answer.status_code == 400
    assert field in answer.context["form"].errors


def test_the_farm_of_another_business_is_not_there(desk):
    far = make_house("Elsewhere").farm
    assert desk.post(reverse("agreements", args=[far.pk]), TOLD).status_code == 404
