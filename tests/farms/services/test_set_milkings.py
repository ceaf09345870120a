"""When a farm milks."""

from datetime import time

import pytest
from django.core.exceptions import ValidationError

from farms.models import Milking
from farms.services.set_milkings import DailyMilking, set_milkings
from tests.factories import make_farm


def times_of(farm):
    rows = Milking.objects.within(farm.scope).filter(farm=farm)
    return [(row.weekday, row.starts, row.minutes) for row in rows]


def test_a_daily_milking_stands_on_all_seven_days(house):
    set_milkings(farm=house.farm, milkings=[DailyMilking(time(5, 30), 150)])
    assert times_of(house.farm) == [(day, time(5, 30), 150) for day in range(7)]


def test_single_days_may_differ(house):
    weekend = DailyMilking(time(7), 150, weekdays=(5, 6))
    set_milkings(farm=house.farm, milkings=[DailyMilking(time(5), 150, weekdays=(0, 1, 2, 3, 4)), weekend])
    assert times_of(house.farm)[-1] == (6, time(7), 150)
    assert len(times_of(house.farm)) == 7


def test_what_was_told_before_is_replaced_and_an_empty_list_takes_all_away(house):
    assert len(times_of(house.farm)) == 14
    set_milkings(farm=house.farm, milkings=[])
    assert times_of(house.farm) == []


def test_another_farm_keeps_its_own(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    set_milkings(farm=house.farm, milkings=[])
    assert len(times_of(other)) == 14


@pytest.mark.parametrize(
    "milkings",
    [
        [DailyMilking(time(6), 120), DailyMilking(time(6), 90)],
        [DailyMilking(time(6), 120, weekdays=(7,))],
        [DailyMilking(time(6), 0)],
    ],
    ids=["twice at the same time", "an eighth day", "no minutes"],
)
def test_what_cannot_be_is_refused_and_the_old_times_stay(house, milkings):
    before = times_of(house.farm)
    with pytest.raises(ValidationError):
        set_milkings(farm=house.farm, milkings=milkings)
    assert times_of(house.farm) == before
