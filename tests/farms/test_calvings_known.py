"""The calvings that were known before calvings were kept one by one."""

from datetime import date
from importlib import import_module

import pytest
from django.apps import apps

from farms.models import Calving, Cow
from tests.factories import House, make_cow, make_house
from trimops.tenancy.unscoped import unscoped

MOVE = import_module("farms.migrations.0003_calvings_known")


@pytest.fixture
def house(db) -> House:
    return make_house()


@pytest.fixture
def old_cow(house):
    """As she stood before: a calving day on the cow and no calvings."""
    cow = make_cow(house.farm, "312", calved_on=date(2025, 6, 1))
    Calving.objects.within(house.scope).filter(cow=cow).delete()
    return cow


def calvings(cow):
    return list(Calving.objects.within(cow.scope).filter(cow=cow).values_list("calved_on", "lactation"))


def test_the_known_calving_of_each_cow_becomes_the_first_of_her_calvings_once(house, old_cow):
    with unscoped("as a migration reads"):
        MOVE.note_known_calvings(apps, None)
        MOVE.note_known_calvings(apps, None)
    assert calvings(old_cow) == [(date(2025, 6, 1), None)]
    assert calvings(house.cow) == []


def test_going_back_leaves_the_day_on_the_cow(house, old_cow):
    MOVE.leave_calvings(apps, None)
    assert Cow.objects.within(house.scope).get(pk=old_cow.pk).calved_on == date(2025, 6, 1)
