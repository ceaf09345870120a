from datetime import timedelta

import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON, make_blade
from visits.domain.kit.blade_kinds import BladeState
from visits.models import Blade, BladeEvent
from visits.services.kit.save_blade import BladeDayRefused, save_blade


def keep(house, was_used=False, **fields):
    words = {"name": "Red", "van": house.van, "bought_on": NOON.date(), **fields}
    blade = Blade(business=house.business, **words)
    return save_blade(blade=blade, was_used=was_used, at=NOON, by=house.owner)


@pytest.mark.parametrize(("was_used", "state"), [(False, BladeState.BOUGHT), (True, BladeState.IN_USE)])
def test_a_new_one_begins_as_it_came_to_the_list(house, was_used, state):
    blade = keep(house, was_used)
    (event,) = BladeEvent.objects.within(house.scope)
    assert (blade.state, event.state, event.by) == (state, state, house.owner)
    assert event.at <= NOON


def test_mending_it_says_nothing_of_its_state(house):
    blade = make_blade(house.van, "Blue")
    blade.name = "Blue"
    save_blade(blade=blade, was_used=True, at=NOON, by=house.owner)
    assert not BladeEvent.objects.within(house.scope).exists()
    assert Blade.objects.within(house.scope).get().state == BladeState.BOUGHT


def test_a_day_to_come_is_refused(house):
    with pytest.raises(BladeDayRefused) as fault:
        keep(house, bought_on=NOON.date() + timedelta(days=1))
    assert fault.value.field == "bought_on"


def test_two_of_one_name_in_a_van_are_refused(house):
    keep(house)
    with pytest.raises(ValidationError):
        keep(house)
    keep(house, van=None)
