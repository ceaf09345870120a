import pytest
from django.core.files.uploadedfile import SimpleUploadedFile
from django.urls import reverse

from invoicing.models import MoneyRules
from tests.factories import make_house
from tests.invoicing.services.test_save_money_rules import picture

pytestmark = pytest.mark.django_db
TOLD = {
    "invoice_prefix": "INV",
    "credit_prefix": "CN",
    "tax_name": "VAT",
    "rounding_rule": "total_down",
    "books_begin_month": "4",
    "iban": "GB29 NWBK 6016 1331 9268 19",
    "interest_margin": "8,00",
    "interest_days_in_year": "365",
    "rate_rule": "last_half",
    "days": "7, 21 35",
    "sums": "0: 40\n1000: 70,00",
    "distance_unit": "SMI",
}


def test_rules_are_kept_and_shown_again(office, house):
    page = reverse("money_rules")
    assert (
        office.post(page, {**TOLD, "picture": SimpleUploadedFile("logo.png", picture())}).status_code == 302
    )
    row = MoneyRules.objects.within(house.scope).get()
    assert (row.iban, row.reminder_days) == ("GB29NWBK60161331926819", [7, 21, 35])
    assert (row.fixed_sums, row.rounding_rule) == ([["0", "40"], ["1000", "70.00"]], "total_down")
    form = office.get(page).context["form"]
    assert (form["days"].value(), form["sums"].value()) == ("7, 21, 35", "0: 40.00\n1000: 70.00")
    assert office.get(reverse("money_logo"))["Content-Type"] == "image/png"
    assert office.post(page, {**TOLD, "no_picture": "on"}).status_code == 302
    assert office.get(reverse("money_logo")).status_code == 404


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"iban": "GB29 NWBK 6016 1331 9268 18"}, "iban"),
        ({"bic": "NWBK"}, "bic"),
        ({"days": "soon"}, "days"),
        ({"days": "21, 7"}, "days"),
        ({"sums": "1000"}, "sums"),
        ({"cash_discount_percent": "2"}, "cash_discount_days"),
        ({"invoice_prefix": "inv 1"}, "invoice_prefix"),
        ({"picture": SimpleUploadedFile("logo.gif", b"GIF89a")}, "picture"),
    ],
)
def test_what_cannot_be_kept_is_said_at_its_field(office, house, changes, field):
    answer = office.post(reverse("money_rules"), {**TOLD, **changes})
    assert answer.status_code == 400
    assert field in answer.context["form"].errors
    assert not MoneyRules.objects.within(house.scope).exists()


def test_the_logo_of_another_business_is_not_shown(office):
    MoneyRules.objects.create(business=make_house("Elsewhere").business, logo=picture())
    assert office.get(reverse("money_logo")).status_code == 404
