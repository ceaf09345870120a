"""The mileage log on its pages: taken from the visits, mended, put in by hand."""

from datetime import timedelta

from django.test import Client
from django.urls import reverse
from django.utils import timezone

from invoicing.models import Journey
from tests.factories import TUESDAY_TEN, finished, make_house

MARCH = "?kind=month&first=2026-03-03"
RATE = {
    "valid_from": "2025-04-06",
    "unit": "KMT",
    "first_rate": "0.45",
    "up_to": "10000",
    "then_rate": "0.25",
    "month": "4",
    "day": "6",
    "source": "The tax office's page",
}


def test_the_drives_of_finished_visits_come_into_the_log_once(house, office):
    finished(house.farm, house.van, TUESDAY_TEN)
    address = reverse("mileage") + MARCH
    html = office.post(address, follow=True).content.decode()
    assert "2 drives are new" in html
    assert "No allowance is put down" in html
    assert "in the log already" in office.post(address, follow=True).content.decode()
    office.post(reverse("mileage_rates"), RATE)
    assert "allowance</h1>" in office.get(address).content.decode()


def test_a_mended_drive_shows_both_figures(house, office):
    finished(house.farm, house.van, TUESDAY_TEN)
    office.post(reverse("mileage") + MARCH)
    row = Journey.objects.within(house.scope).first()
    page = reverse("journey", args=[row.pk])
    assert office.post(page, {"distance": "21.5", "because": ""}).status_code == 400
    html = office.post(page, {"distance": "21.5", "because": "Odometer"}, follow=True).content.decode()
    assert f"odometer; it was {row.distance}" in html
    assert "Why: Odometer" in office.get(page).content.decode()


def test_a_drive_is_put_in_by_hand(house, office):
    said = {
        "on": "2026-03-02",
        "from_words": "Yard",
        "to_words": "Merchant",
        "purpose": "Glue",
        "distance": "8.4",
    }
    ahead = {**said, "on": (timezone.now() + timedelta(days=9)).date().isoformat()}
    assert office.post(reverse("journey_new"), ahead).status_code == 400
    html = office.post(reverse("journey_new"), said, follow=True).content.decode()
    assert "Yard to Merchant" in html
    assert "8.4 km driven" in html


def test_wrong_rates_are_told(office, house):
    page = reverse("mileage_rates")
    assert office.post(page, {**RATE, "then_rate": ""}).status_code == 400
    assert office.post(page, {**RATE, "month": "2", "day": "30"}).status_code == 400
    assert "£0.45 a kilometre since Sun 6 Apr 2025" in office.post(page, RATE, follow=True).content.decode()


def test_another_business_cannot_touch_a_drive(house, office):
    finished(house.farm, house.van, TUESDAY_TEN)
    office.post(reverse("mileage") + MARCH)
    stranger = Client()
    stranger.force_login(make_house("Elsewhere Trimming").owner)
    page = reverse("journey", args=[Journey.objects.within(house.scope).first().pk])
    assert stranger.post(page, {"distance": "1", "because": "x"}).status_code == 404
    assert "no drive is noted" in stranger.get(reverse("mileage") + MARCH).content.decode()
