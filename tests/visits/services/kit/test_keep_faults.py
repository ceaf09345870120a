"""A cracked blade does not come back into use because the farm where it cracked was erased."""

from uuid import uuid4

import pytest

from tests.factories import finish, make_blade, make_house, under_way
from visits.domain.kit.blade_kinds import BladeState, TurnPart
from visits.models import BladeEvent, BladeSaid, BladeTurn
from visits.services.forget_visits import forget_visits
from visits.services.kit.settle_blade import settle_blade

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    ("part", "state"), [(TurnPart.CRACKED, "out_of_use"), (TurnPart.WENT_DULL, "in_use")]
)
def test_what_was_said_broken_stays_out_of_use_after_the_farm_is_forgotten(part, state):
    house = make_house()
    blade = make_blade(house.van, "Blue", state=BladeState.IN_USE)
    visit = finish(under_way(house.farm, house.van), house.trimmer)
    turn = BladeTurn.objects.create(
        business=house.business, visit=visit, record=uuid4(), at=visit.started_at, by=house.trimmer
    )
    BladeSaid.objects.create(business=house.business, turn=turn, blade=blade, part=part)
    before = settle_blade(blade=blade)
    forget_visits(farm=house.farm, kept=())
    after = settle_blade(blade=blade)
    assert (after.state == BladeState.OUT_OF_USE) is (state == "out_of_use")
    assert (after.state, after.fault) == (before.state, before.fault)
    assert BladeEvent.objects.within(house.scope).count() == (1 if part.is_out else 0)
