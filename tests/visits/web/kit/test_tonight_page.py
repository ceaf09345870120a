"""The evening's list, as the page shows it."""

from datetime import time, timedelta
from decimal import Decimal

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_blade, make_house, make_kit, planned, stock_up, under_way
from trimops.kernel.clock import at_local, local_day
from visits.domain.kit.blade_kinds import BladeFault, BladeState
from visits.domain.kit.stock_kinds import MovementKind, UseOf
from visits.models import StockMovement
from visits.selectors.kit.tonight import tonight
from visits.services.kit.stock_place import place_of_van

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


def page(user):
    client = Client()
    client.force_login(user)
    return client.get(reverse("kit_tonight"))


def test_a_business_without_stock_has_nothing_to_do(house):
    said = page(house.trimmer).content.decode()
    assert "Nothing is to be done tonight" in said


def test_what_was_used_beyond_what_was_there_is_to_be_counted(house):
    now, item = timezone.now(), make_kit(house.business)["glue"]
    stock_up(item, 1000, at=now - timedelta(days=2))
    StockMovement.objects.create(
        business=house.business,
        consumable=item,
        place=place_of_van(house.van),
        kind=MovementKind.USED,
        use_of=UseOf.BY_HAND,
        quantity=Decimal(-50),
        at=now - timedelta(days=1),
        noted_at=now,
    )
    (task,) = (task for task in tonight(house.business, now).tasks if task.job == "count")
    assert (task.name, task.what) == ("Glue", house.van.name)
    assert "below nought" in page(house.trimmer).content.decode()


def test_a_visit_of_today_without_a_wash_down_is_told(house):
    now = timezone.now()
    visit = under_way(house.farm, house.van, now - timedelta(minutes=1))
    type(visit).objects.within(house.scope).filter(pk=visit.pk).update(state="finished", finished_at=now)
    (task,) = (task for task in tonight(house.business, now).tasks if task.job == "wash")
    assert house.farm.name in task.why


def test_a_cracked_blade_that_nobody_saw_to_is_told(house):
    make_blade(house.van, "Blue", state=BladeState.OUT_OF_USE, fault=BladeFault.CRACKED)
    make_blade(house.van, "Red", state=BladeState.OUT_OF_USE, fault=BladeFault.LOST)
    make_blade(house.van, "Ash", state=BladeState.RETIRED, fault=BladeFault.CRACKED)
    (task,) = (task for task in tonight(house.business, timezone.now()).tasks if task.job == "broken")
    assert (task.name, task.what) == ("Blue", f"cracked, in {house.van.name}")
    assert "leave out 1 broken blade" in page(house.trimmer).content.decode()


def test_the_van_is_loaded_for_its_next_day(house):
    now = timezone.now()
    for item in make_kit(house.business).values():
        stock_up(item, 4000, at=now - timedelta(days=2))
    tomorrow = local_day(now, house.business.zone) + timedelta(days=1)
    start = at_local(tomorrow, time(10), house.business.zone)
    planned(house.farm, house.van, start, head_count=40)
    evening = tonight(house.business, now)
    (task,) = (task for task in evening.tasks if task.job == "load")
    assert "40 cows at 1 farm" in task.why
    assert evening.vans == [(house.van, tomorrow)]
    assert evening.title.startswith("Tonight: load")


def test_it_tells_nothing_of_another_business(house):
    other, now = make_house("Next Door Trimming"), timezone.now()
    stock_up(make_kit(other.business)["glue"], 10, at=now - timedelta(days=200))
    assert tonight(house.business, now).tasks == []


def test_the_farm_client_does_not_see_it(house):
    assert page(house.client).status_code == 403
