from datetime import timedelta

import pytest

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    confirmed,
    finish,
    finished,
    make_cow,
    make_farm,
    make_house,
    put_down,
    trimmed_foot,
    under_way,
)
from visits.selectors.driven_days import driven_days
from visits.selectors.length_history import finished_visits, length_history


def test_a_finished_visit_is_told_with_its_cows_by_kind_its_blocks_and_its_minutes(house):
    visit = under_way(house.farm, house.van, head_count=3, corrective_count=1)
    put_down(visit, house.cow, trimmed_foot())
    put_down(visit, make_cow(house.farm, "55"), blocked_foot())
    finish(visit, house.trimmer, TUESDAY_TEN + timedelta(minutes=95))
    (told,) = length_history(house.scope)
    assert told.minutes == 95
    assert (told.work.functional, told.work.corrective, told.work.blocks) == (1, 1, 1)
    assert (told.asked.farm, told.asked.van, told.asked.head_count) == (house.farm.pk, house.van.pk, 3)
    assert told.day == TUESDAY_TEN.date()


def test_visits_still_open_and_those_of_others_are_not_in_it(house):
    confirmed(house.farm, house.van)
    other = make_house("Elm & Oak")
    finish(under_way(other.farm, other.van), other.trimmer)
    assert length_history(house.scope) == []


@pytest.fixture
def second_farm(house):
    return make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")


@pytest.mark.parametrize(("hour", "counted"), [(7, 1), (11, 0)])
def test_drives_are_gaps_between_two_farms_outside_of_the_meals_hours(house, second_farm, hour, counted):
    start = TUESDAY_TEN.replace(hour=hour)
    finish(under_way(house.farm, house.van, start), house.trimmer, start + timedelta(hours=1))
    there = start + timedelta(hours=1, minutes=25)
    finish(under_way(second_farm, house.van, there), house.trimmer, there + timedelta(hours=1))
    days = driven_days(house.business, TUESDAY_TEN + timedelta(days=3))
    assert [driven.really for driven in days.between] == [25] * counted
    assert [late for _, late in days.first_late] == [0]


def test_a_visit_to_an_erased_farm_teaches_nothing_since_nobody_knows_what_was_done(house):
    visit = finished(house.farm, house.van)
    assert list(finished_visits(house.scope)) == [visit]
    house.farm.erased_at = NOON
    house.farm.save()
    assert not finished_visits(house.scope).exists()
