"""A day that runs late is told to the farms that wait, by what is really known of it."""

from datetime import timedelta

import pytest

from tests.factories import (
    TUESDAY_TEN,
    confirmed,
    make_cow,
    make_farm,
    planned,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.visits.services.messages.told_farms import again, mailed, subjects, switch_on, written
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules
from visits.services.messages.tell_delays import tell_delays
from visits.services.plan_visit import plan_visit
from visits.services.start_visit import start_visit

EIGHT = TUESDAY_TEN - timedelta(hours=2)
MIN = timedelta(minutes=1)
HOUR = timedelta(hours=1)


@pytest.fixture
def day(house):
    """Twenty cows at the first farm since eight; the second was promised twelve o'clock and counts on it."""
    switch_on(house, MessageKind.LATE, late_minutes=20)
    second = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15", longitude="-2.35")
    first = under_way(house.farm, house.van, EIGHT, head_count=20)
    mailed(house, "Odo Other", farm=second)
    then = confirmed(second, house.van, TUESDAY_TEN + 2 * HOUR, head_count=10)
    return first, then


def tell(house, at):
    return [message.visit for message in tell_delays(van=again_van(house), at=at)]


def again_van(house):
    return type(house.van).objects.within(house.scope).select_related("business").get(pk=house.van.pk)


def slow(house, first, at, done=12):
    """A few cows by `at`, the last of them just now."""
    known = house.farm.cows.within(house.scope).count()
    for n in range(done):
        cow = make_cow(house.farm, str(3000 + known + n))
        put_down(first, cow, trimmed_foot(), at=at - (done - n) * MIN)


def test_a_day_in_time_tells_nobody(house, day):
    first, _ = day
    slow(house, first, EIGHT + 30 * MIN, done=8)
    assert tell(house, EIGHT + 30 * MIN) == []


def test_a_farm_that_waits_is_told_once_for_each_further_delay(house, day):
    first, then = day
    at = TUESDAY_TEN + 2 * HOUR
    slow(house, first, at, done=16)
    assert tell(house, at) == [then]
    assert tell(house, at + MIN) == []
    assert subjects(house) == ["Later today at High Croft"]
    told = written(house)[0].worthless_after
    slow(house, first, told, done=1)
    assert tell(house, told) == [then]
    assert tell(house, told) == []


def test_the_minutes_are_those_later_than_told(house, day):
    first, _ = day
    slow(house, first, TUESDAY_TEN + HOUR)
    tell(house, TUESDAY_TEN + HOUR)
    body = written(house)[0].body
    late = int(body.partition("some ")[2].partition(" minutes")[0])
    assert 20 < late <= 180


def test_a_phone_out_of_reach_tells_nothing(house, day):
    first, _ = day
    slow(house, first, TUESDAY_TEN)
    assert tell(house, TUESDAY_TEN + 46 * MIN) == []


def test_nothing_is_told_after_the_visit_began(house, day):
    first, then = day
    slow(house, first, TUESDAY_TEN + HOUR)
    start_visit(visit=then, checked=True, at=TUESDAY_TEN + HOUR, by=house.trimmer)
    assert tell(house, TUESDAY_TEN + HOUR) == []


def test_a_farm_that_knows_of_no_hour_is_not_told_that_it_moves(house):
    switch_on(house, MessageKind.LATE)
    second = make_farm(house.business, "High Croft", by=house.owner)
    mailed(house, farm=second)
    first = under_way(house.farm, house.van, EIGHT, head_count=20)
    planned(second, house.van, TUESDAY_TEN + 2 * HOUR)
    slow(house, first, TUESDAY_TEN + HOUR)
    assert tell(house, TUESDAY_TEN + HOUR) == []


def test_a_farm_whose_visit_was_moved_without_a_word_is_told_against_the_hour_it_knows(house, day):
    first, then = day
    row = again(then)
    row.state, row.hour_told = "planned", row.planned_start
    row.save()
    plan_visit(visit=row, van=house.van, start=TUESDAY_TEN + 4 * HOUR, at=TUESDAY_TEN, by=house.office)
    slow(house, first, TUESDAY_TEN + HOUR)
    assert tell(house, TUESDAY_TEN + HOUR) == [then]


def test_switched_off_it_tells_nobody(house, day):
    first, _ = day
    rules = MessageRules.objects.within(house.scope).get()
    rules.switched_on = []
    rules.save()
    slow(house, first, TUESDAY_TEN + HOUR)
    assert tell(house, TUESDAY_TEN + HOUR) == []
