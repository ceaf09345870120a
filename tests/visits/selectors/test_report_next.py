from datetime import date, timedelta

import pytest
from django.db import transaction

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_house,
    planned,
    put_down,
    under_way,
)
from visits.models import Block, Recheck
from visits.selectors.report_next import (
    NOBODY_COMES,
    block_lines,
    coming_visits,
    farm_tasks,
    next_visit_words,
)
from visits.selectors.visit_story import visit_story
from visits.services.gather_farm_rechecks import gather_farm_rechecks
from visits.services.plan_visit import plan_visit

DAY = date(2026, 3, 3)


@pytest.fixture(scope="module")
def house(django_db_setup, django_db_blocker):
    """Made once for the file; what a test adds goes with the test."""
    with django_db_blocker.unblock(), transaction.atomic():
        yield make_house()
        transaction.set_rollback(True)


@pytest.fixture(autouse=True)
def _each_by_itself(db):
    """Every test ends where it began."""


def done(house, cow, after=timedelta(0)):
    visit = under_way(house.farm, house.van, TUESDAY_TEN + after)
    put_down(visit, cow, blocked_foot())
    return finish(visit, house.trimmer)


def who(visit):
    return [line.who for line in block_lines(visit, DAY)]


def test_a_block_says_who_takes_it_off_as_its_re_check_is_booked(house):
    visit = done(house, house.cow)
    assert who(visit) == [NOBODY_COMES]
    (again,) = gather_farm_rechecks(farm=house.farm, today=DAY, at=NOON)
    assert who(visit) == ["we come by Tue 31 Mar, hour to be told"]
    plan_visit(visit=again, van=house.van, start=TUESDAY_TEN + timedelta(days=27), at=NOON, by=house.trimmer)
    assert who(visit) == ["we come Mon 30 Mar, 11:00"]
    Recheck.objects.within(house.scope).update(visit=done(house, house.cow, after=-timedelta(days=7)))
    assert who(visit)[-1] == NOBODY_COMES, "a visit of before does not see to it"


def test_blocks_of_before_that_are_still_on_are_told_and_those_that_came_off_since_too(house):
    done(house, make_cow(house.farm, "102"), after=-timedelta(days=14))
    visit = done(house, house.cow)
    Block.objects.within(house.scope).filter(cow=house.cow).update(off_on=DAY + timedelta(days=20))
    assert [(line.cow, line.put_on) for line in block_lines(visit, DAY)] == [
        ("102", DAY - timedelta(days=14)),
        ("101", DAY),
    ]
    Block.objects.within(house.scope).filter(cow__number="102").update(off_on=DAY)
    assert [line.cow for line in block_lines(visit, DAY)] == ["101"]


def test_the_next_visit_is_the_one_after_this_however_late_it_is_asked(house):
    visit = done(house, house.cow)
    assert next_visit_words(visit, coming_visits(visit)) == ""
    later = done(house, house.cow, after=timedelta(days=28))
    planned(house.farm, house.van, TUESDAY_TEN + timedelta(days=60))
    assert next_visit_words(visit, coming_visits(visit)) == "Tue 31 Mar 2026, 11:00"
    assert coming_visits(visit)[0] == later


def test_what_is_the_farm_s_to_do_has_its_day_and_its_cows(house):
    visit = done(house, house.cow)
    assert [(task.words, task.by, task.cows) for task in farm_tasks(visit_story(house.scope, visit))] == [
        ("Keep on even, dry ground", None, ("101",)),
        ("Bring again for the re-check", date(2026, 3, 31), ("101",)),
    ]
