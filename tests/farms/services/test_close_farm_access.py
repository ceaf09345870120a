"""Somebody of a farm sees it no more."""

from farms.models import FarmAccess
from farms.selectors.seat import farms_open_to, memberships_of
from farms.services.close_farm_access import close_farm_access
from tests.factories import NOON, let_in, make_farm
from trimops.accounts.roles import Role


def close(house, farm):
    close_farm_access(access=FarmAccess.objects.within(house.scope).get(farm=farm), at=NOON)


def test_the_other_farms_of_the_person_stay_open(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    let_in(house.memberships[Role.FARM], other)
    close(house, house.farm)
    assert [access.farm for access in farms_open_to(house.memberships[Role.FARM])] == [other]


def test_with_the_last_farm_they_leave_the_business(house):
    close(house, house.farm)
    assert memberships_of(house.client) == []
