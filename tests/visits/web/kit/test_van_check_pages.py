"""The van's page: loaded as listed, the forecast typed, and what is refused."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_house, make_kit, planned, stock_up
from visits.models import StockMovement, TypedWeather


@pytest.fixture
def house(db):
    """A hundred cows the day after tomorrow, glue that does not stand the cold."""
    house = make_house()
    kit = make_kit(house.business)
    kit["glue"].lowest_celsius = 8
    kit["glue"].save()
    for name in ("wood", "glue"):
        stock_up(kit[name], 1000, at=timezone.now() - timedelta(days=1))
    start = timezone.now().replace(hour=9, minute=0, second=0, microsecond=0) + timedelta(days=2)
    planned(house.farm, house.van, start, head_count=100)
    return house


@pytest.fixture
def cab(house):
    client = Client()
    client.force_login(house.trimmer)
    return client


def address(name, house):
    return reverse(name, args=[house.van.pk])


def filled_in(cab, house):
    form = cab.get(address("kit_van_check", house)).context["form"]
    told = {field.name: field.value() for field in form if field.name != "is_really_there"}
    return {name: "" if value is None else value for name, value in told.items()}


def test_loaded_as_listed_the_van_has_all_it_needs(house, cab):
    page = cab.get(address("kit_van_check", house))
    assert "Load 2 things for" in page.content.decode()
    assert "100 cows at 1 farm" in page.content.decode()
    told = filled_in(cab, house)
    assert cab.post(address("kit_load", house), told).status_code == 302
    assert cab.post(address("kit_load", house), told).status_code == 302
    rows = StockMovement.objects.within(house.scope).filter(kind="moved", quantity__gt=0)
    assert {row.consumable.name for row in rows.select_related("consumable")} == {"Wooden block", "Glue"}
    # Wraps are missing still: nobody has any.
    page = cab.get(address("kit_van_check", house)).content.decode()
    assert "1 thing is missing for" in page


def test_the_second_of_two_tabs_is_shown_the_list_of_now(house, cab):
    first, second = filled_in(cab, house), filled_in(cab, house)
    assert first["uid"] != second["uid"]
    cab.post(address("kit_load", house), first)
    answer = cab.post(address("kit_load", house), second, follow=True).content.decode()
    assert "was loaded or unloaded meanwhile" in answer
    assert "1 thing is missing for" in answer
    assert StockMovement.objects.within(house.scope).filter(kind="moved", quantity__gt=0).count() == 2


def test_more_than_is_there_is_asked_about(house, cab):
    told = filled_in(cab, house)
    name = next(key for key in told if key.startswith("item_") and told[key])
    answer = cab.post(address("kit_load", house), {**told, name: "1200"})
    assert answer.status_code == 409
    assert "It was really there: book it" in answer.content.decode()
    assert not StockMovement.objects.within(house.scope).filter(kind="moved").exists()


def test_nothing_typed_is_told(house, cab):
    told = {key: "" if key.startswith("item_") else value for key, value in filled_in(cab, house).items()}
    assert cab.post(address("kit_load", house), told).status_code == 400


def test_a_typed_frost_is_warned_of(house, cab):
    answer = cab.post(address("kit_weather", house), {"lowest": "-3,5", "highest": ""}, follow=True)
    assert "Glue: \N{MINUS SIGN}3.5 °C is said, its label stops at 8 °C" in answer.content.decode()
    assert TypedWeather.objects.within(house.scope).count() == 1
    refused = cab.post(address("kit_weather", house), {"lowest": "5", "highest": "1"})
    assert refused.status_code == 409
    assert "below its coldest" in refused.content.decode()
    assert cab.post(address("kit_weather", house), {"lowest": ""}).status_code == 400


def test_a_day_that_is_over_or_unreadable_is_the_next_one(house, cab):
    for asked in ("2020-01-01", "soon"):
        page = cab.get(address("kit_van_check", house), {"day": asked})
        assert page.context["check"].cows == 100
