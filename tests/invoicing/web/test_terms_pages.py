import pytest
from django.urls import reverse

from invoicing.models import FarmTerms
from tests.factories import make_house
from tests.invoicing.services.price_sheets import rate

pytestmark = pytest.mark.django_db
TOLD = {
    "rhythm": "month",
    "addresses": "office@farm.example\n office@farm.example\nherd@farm.example",
    "country": "ie",
    "payment_days": "14",
    "order_number": "PO 7",
    "sends_xml": "on",
}


def test_terms_are_kept_and_shown_again(office, house):
    page = reverse("farm_terms", args=[house.farm.pk])
    assert "is billed each visit" in office.get(page).text
    assert office.post(page, TOLD).status_code == 302
    row = FarmTerms.objects.within(house.scope).get()
    assert row.send_to == ["office@farm.example", "herd@farm.example"]
    assert (row.rhythm, row.payment_days, row.sends_xml, row.gets_reminders) == ("month", 14, True, False)
    house.farm.refresh_from_db()
    assert house.farm.country == "IE"
    form = office.get(page).context["form"]
    assert form["addresses"].value() == "office@farm.example\nherd@farm.example"
    assert "is billed each month" in office.get(page).text


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"addresses": "nobody"}, "addresses"),
        ({"country": "QQ"}, "country"),
        ({"tax_code": "unheard"}, "tax_code"),
    ],
)
def test_what_cannot_be_kept_is_said_at_its_field(office, house, changes, field):
    rate(house.business)
    answer = office.post(reverse("farm_terms", args=[house.farm.pk]), {**TOLD, **changes})
    assert answer.status_code == 400
    assert field in answer.context["form"].errors


def test_the_farm_page_leads_there_and_another_business_s_farm_does_not(office, house):
    assert (
        reverse("farm_terms", args=[house.farm.pk]) in office.get(reverse("farm", args=[house.farm.pk])).text
    )
    far = make_house("Elsewhere").farm
    assert office.get(reverse("farm_terms", args=[far.pk])).status_code == 404
