import pytest

from farms.models import FarmAccess
from farms.selectors.seat import rights_of
from farms.services.invite_farm_client import FarmGuest, WorksHereAlready, invite_farm_client
from tests.factories import make_farm, make_house
from trimops.accounts.models import Membership
from trimops.accounts.roles import FarmRight, Role
from trimops.accounts.services.end_membership import end_membership
from trimops.accounts.services.invite_person import Guest, invite_person

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


def invite(house, farm, email="herd@farm.example", name="Herd Manager"):
    return invite_farm_client(
        farm=farm, guest=FarmGuest(email, name), at=farm.business.created_at, by=house.owner
    )


def test_a_guest_becomes_a_farm_client_with_access_to_that_farm_alone(house):
    membership = invite(house, house.farm)
    assert membership.role == Role.FARM
    assert membership.joined_at is None
    rows = FarmAccess.objects.within(house.scope).filter(membership=membership)
    assert [row.farm_id for row in rows] == [house.farm.pk]


def test_inviting_twice_gives_one_access(house):
    first, second = invite(house, house.farm), invite(house, house.farm)
    assert first.pk == second.pk
    assert FarmAccess.objects.within(house.scope).filter(membership=first).count() == 1


def test_a_client_may_see_a_second_farm(house):
    other = make_farm(house.business, "Second Farm", by=house.owner)
    invite(house, house.farm)
    membership = invite(house, other)
    assert FarmAccess.objects.within(house.scope).filter(membership=membership).count() == 2


def test_staff_are_not_made_farm_clients(house):
    with pytest.raises(WorksHereAlready):
        invite(house, house.farm, email=house.office.email)


def test_a_client_who_left_and_comes_back_sees_only_the_farm_they_come_back_to(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    left = end_membership(membership=invite(house, house.farm), at=house.business.created_at)
    back = invite(house, other)
    assert back.pk == left.pk
    rows = FarmAccess.objects.within(house.scope).filter(membership=back)
    assert [row.farm_id for row in rows] == [other.pk]


def test_somebody_who_is_asked_in_as_staff_is_not_made_a_farm_client(house):
    guest = Guest("new@farm.example", "A New Trimmer", Role.TRIMMER)
    asked = invite_person(business=house.business, guest=guest, at=house.business.created_at, by=house.owner)
    with pytest.raises(WorksHereAlready):
        invite(house, house.farm, email="new@farm.example")
    assert Membership.objects.get(pk=asked.pk).role == Role.TRIMMER


def test_a_guest_is_asked_in_with_the_rights_that_are_given(house):
    guest = FarmGuest("office@farm.example", "Farm Office", frozenset({FarmRight.SEES_MONEY}))
    membership = invite_farm_client(
        farm=house.farm, guest=guest, at=house.business.created_at, by=house.owner
    )
    assert rights_of(FarmAccess.objects.within(house.scope).get(membership=membership)) == guest.rights
