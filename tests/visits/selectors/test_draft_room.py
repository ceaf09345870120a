"""Whether a visit may take longer: by every rule of the planner, with all other hours held."""

from datetime import timedelta

import pytest

from tests.factories import NOON, TUESDAY_TEN, finished, make_farm, planned, wanted
from visits.models import ShiftPattern
from visits.selectors.draft_room import draft_room
from visits.services.start_visit import start_visit


@pytest.fixture
def there(house):
    return make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")


def test_a_visit_without_an_hour_and_one_that_is_over_have_none(house):
    assert draft_room(wanted(house.farm), NOON) is None
    assert draft_room(finished(house.farm, house.van), NOON) is None


def test_a_day_that_is_gone_has_none(house):
    assert draft_room(planned(house.farm, house.van), NOON + timedelta(days=30)) is None


def test_the_working_day_of_the_van_is_kept(house):
    house.farm.milkings.within(house.scope).delete()
    room = draft_room(planned(house.farm, house.van), NOON)
    to_the_end = 7 * 60
    assert room.fits(120, 5)
    assert not room.fits(to_the_end, 5), "the van must be home at five"


def test_the_meal_is_kept(house, there):
    ShiftPattern.objects.within(house.scope).update(
        meal_minutes=45, meal_earliest="11:30", meal_latest="13:30"
    )
    visit = planned(house.farm, house.van, head_count=2)
    planned(there, house.van, TUESDAY_TEN + timedelta(hours=4), head_count=2)
    hungry = _longest(draft_room(visit, NOON))
    ShiftPattern.objects.within(house.scope).update(meal_minutes=0)
    assert _longest(draft_room(visit, NOON)) - hungry == 45


def _longest(room):
    return max(minutes for minutes in range(60, 240, 5) if room.fits(minutes, 2))


def test_a_visit_under_way_before_it_is_reckoned_with(house, there):
    first = planned(there, house.van, TUESDAY_TEN - timedelta(hours=2), head_count=4)
    second = planned(house.farm, house.van, TUESDAY_TEN + timedelta(hours=1), head_count=2)
    start_visit(visit=first, checked=True, at=TUESDAY_TEN - timedelta(hours=2), by=house.trimmer)
    room = draft_room(second, TUESDAY_TEN - timedelta(hours=1))
    assert room.fits(120, 5)
    assert not room.fits(240, 5), "milking at four, and an hour before it"
