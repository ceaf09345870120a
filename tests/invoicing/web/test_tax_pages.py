import pytest
from django.urls import reverse

from invoicing.models import TaxRate
from tests.factories import make_house
from tests.invoicing.services.price_sheets import rate

pytestmark = pytest.mark.django_db
TOLD = {
    "code": "standard",
    "name": "Standard",
    "category": "S",
    "percent": "19,00",
    "valid_from": "2026-01-01",
}


def test_the_country_s_rates_are_offered_and_taken_over_after_a_look(office, house):
    house.business.country = "FR"
    house.business.save()
    page = office.get(reverse("tax_rates"))
    assert "Offered for France: TVA" in page.text
    assert "from memory, check" in page.text
    form = office.get(reverse("tax_rates") + "?take=small").context["form"]
    assert form["reason_code"].value() == "VATEX-FR-FRANCHISE"
    assert not TaxRate.objects.within(house.scope).exists()
    assert office.get(reverse("tax_rates") + "?take=unheard").status_code == 200


def test_a_country_that_is_not_put_down_is_no_hindrance(office, house):
    house.business.country = "ZZ"
    house.business.save()
    assert office.get(reverse("tax_rates")).context["scheme"] is None


def test_a_rate_is_kept_mended_and_taken_off(office, house):
    assert office.post(reverse("tax_rates"), TOLD).status_code == 302
    row = TaxRate.objects.within(house.scope).get()
    assert (row.percent, row.name) == (19, "Standard")
    assert office.post(reverse("tax_rate", args=[row.pk]), {**TOLD, "percent": "20"}).status_code == 302
    row.refresh_from_db()
    assert row.percent == 20
    office.post(reverse("tax_rate_drop", args=[row.pk]))
    assert not TaxRate.objects.within(house.scope).exists()


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"percent": "0"}, "percent"),
        ({"category": "E", "percent": "0"}, "reason"),
        ({"category": "E", "percent": "0", "reason_code": "VATEX-X"}, "reason_code"),
        ({"code": "usual"}, "valid_from"),
        ({"code": "two words"}, "code"),
    ],
)
def test_what_cannot_be_kept_is_said_at_its_field(office, house, changes, field):
    rate(house.business)
    answer = office.post(reverse("tax_rates"), {**TOLD, **changes})
    assert answer.status_code == 400
    assert field in answer.context["form"].errors


def test_the_rate_of_another_business_is_not_there(office):
    far = rate(make_house("Elsewhere").business)
    assert office.post(reverse("tax_rate", args=[far.pk]), TOLD).status_code == 404
