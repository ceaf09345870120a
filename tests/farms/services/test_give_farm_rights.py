"""What a person of a farm may do there."""

import pytest

from farms.models import FarmAccess
from farms.selectors.seat import place_of, rights_of
from farms.services.give_farm_rights import give_farm_rights
from trimops.accounts.roles import FarmRight, Role


@pytest.fixture
def access(house):
    return FarmAccess.objects.within(house.scope).get()


def test_who_is_let_in_reads_edits_and_asks_but_sees_no_money_and_hands_nothing_over(access):
    assert rights_of(access) == {FarmRight.READS_REPORTS, FarmRight.EDITS_DRAFT, FarmRight.ASKS_VISITS}


@pytest.mark.parametrize("right", list(FarmRight))
def test_one_right_can_be_given_alone(access, right):
    assert rights_of(give_farm_rights(access=access, rights={right})) == {right}


def test_the_seat_holds_what_was_given(house, access):
    give_farm_rights(access=access, rights={FarmRight.SEES_MONEY})
    place = place_of(house.memberships[Role.FARM], None)
    assert (place.scope.farm_id, place.rights) == (house.farm.pk, {FarmRight.SEES_MONEY})
