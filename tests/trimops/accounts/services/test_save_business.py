import pytest
from django.core.exceptions import ValidationError
from django.urls import reverse

from tests.factories import make_house
from trimops.accounts.models import Business
from trimops.accounts.models.business import known_zones
from trimops.accounts.services.save_business import save_business

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


def test_the_address_is_kept(house):
    house.business.address = "2 New Yard\nAshby Green"
    save_business(business=house.business)
    assert Business.objects.get(pk=house.business.pk).address == "2 New Yard\nAshby Green"


def test_a_zone_that_is_none_is_refused(house):
    house.business.timezone = "Ashby/Green"
    with pytest.raises(ValidationError):
        save_business(business=house.business)


def test_the_list_of_zones_is_read_from_the_disk_once():
    assert known_zones() is known_zones()
    assert {"Europe/London", "UTC"} <= known_zones()


def test_the_owner_mends_it_on_its_page(house, client):
    client.force_login(house.owner)
    words = {
        "name": house.business.name,
        "address": "3 Mill Yard",
        "payment_days": 14,
        "timezone": "Europe/London",
    }
    assert client.post(reverse("business"), words).status_code == 302
    kept = Business.objects.get(pk=house.business.pk)
    assert (kept.address, kept.payment_days) == ("3 Mill Yard", 14)
