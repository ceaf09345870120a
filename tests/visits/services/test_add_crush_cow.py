"""A cow that the phone did not know."""

from uuid import uuid4

import pytest

from farms.models import Cow
from tests.factories import make_cow, make_farm
from visits.domain.writing_content import NewCow
from visits.models import AddedCow
from visits.services.add_crush_cow import add_crush_cow


def add(visit, number="900", uid=None, is_another=False):
    return add_crush_cow(visit=visit, new=NewCow(uid or uuid4(), number, is_another))


def numbers(house):
    return sorted(Cow.objects.within(house.scope).filter(farm=house.farm).values_list("number", flat=True))


def test_an_unknown_number_is_put_on_the_farms_list(house, visit):
    key = add(visit)
    cow = Cow.objects.within(house.scope).get(pk=key)
    assert (cow.number, cow.farm, cow.status) == ("900", house.farm, "milking")


def test_the_same_id_is_the_same_cow_however_often_it_is_sent(house, visit):
    uid = uuid4()
    assert add(visit, uid=uid) == add(visit, uid=uid, number="901", is_another=True)
    assert numbers(house) == ["101", "900"]


def test_a_number_that_just_one_cow_has_means_her(house, visit):
    assert add(visit, "101") == house.cow.pk
    assert AddedCow.objects.within(house.scope).get().cow == house.cow


def test_unless_the_trimmer_says_that_it_is_another(house, visit):
    assert add(visit, "101", is_another=True) != house.cow.pk
    assert numbers(house) == ["101", "101"]


def test_where_two_have_the_number_nobody_guesses(house, visit):
    make_cow(house.farm, "101")
    assert add(visit, "101") not in (house.cow.pk,)
    assert numbers(house) == ["101"] * 3


@pytest.mark.parametrize("status", ["sold", "dead"])
def test_a_cow_that_has_left_the_farm_is_not_meant(house, visit, status):
    gone = make_cow(house.farm, "900", status=status)
    assert add(visit) != gone.pk


def test_a_cow_of_another_farm_is_not_meant(house, visit):
    other = make_cow(make_farm(house.business, "High Croft", by=house.owner), "900")
    assert add(visit) != other.pk
