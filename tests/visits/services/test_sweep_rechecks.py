"""The nightly look at every farm."""

from datetime import UTC, datetime, timedelta

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    finished,
    make_cow,
    make_farm,
    make_house,
    put_down,
    under_way,
    wanted,
)
from visits.domain.routine_due import routine_due
from visits.models import Visit
from visits.services.sweep_rechecks import sweep_rechecks, sweep_routine

DAY = TUESDAY_TEN.date()


def block_a_cow(farm, van, start=TUESDAY_TEN):
    visit = under_way(farm, van, start)
    put_down(visit, make_cow(farm, "55"), blocked_foot())
    return finish(visit, van.trimmer)


def wishes(house, reason):
    return Visit.objects.within(house.scope).open().filter(reason=reason)


def test_each_farm_with_open_rechecks_gets_its_wish_and_a_second_night_none(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    block_a_cow(house.farm, house.van)
    block_a_cow(other, house.van, TUESDAY_TEN + timedelta(hours=5))
    for _ in range(2):
        assert sweep_rechecks(scope=house.scope, today=DAY, at=NOON) == 2
        assert {visit.farm for visit in wishes(house, "recheck")} == {house.farm, other}
        assert wishes(house, "recheck").count() == 2


def test_a_business_without_open_rechecks_wants_nothing(house):
    theirs = make_house("Fell & Beck")
    block_a_cow(theirs.farm, theirs.van)
    assert sweep_rechecks(scope=house.scope, today=DAY, at=NOON) == 0
    assert not wishes(theirs, "recheck").exists()


def test_a_routine_visit_is_wanted_when_its_interval_runs_out_and_only_once(house):
    finished(house.farm, house.van)
    due = routine_due(DAY, house.farm.routine_interval_days, DAY)
    early = due.first - timedelta(days=11)
    assert sweep_routine(scope=house.scope, today=early, at=NOON) == 0
    today = due.first - timedelta(days=10)
    assert sweep_routine(scope=house.scope, today=today, at=NOON) == 1
    assert sweep_routine(scope=house.scope, today=today, at=NOON) == 0
    visit = wishes(house, "routine").get()
    assert (visit.due_from, visit.due_until) == (due.first, due.last)
    assert (visit.head_count, visit.asked_by) == (house.farm.routine_cows, "routine rule")


def test_a_farm_that_has_asked_already_is_not_asked_for_again(house):
    wanted(house.farm)
    assert sweep_routine(scope=house.scope, today=DAY, at=NOON) == 0


def test_a_farm_that_is_no_longer_served_is_passed_over(house):
    house.farm.is_active = False
    house.farm.save()
    assert sweep_routine(scope=house.scope, today=DAY, at=NOON) == 0


def test_the_interval_counts_from_the_day_in_the_zone_of_the_business(house):
    house.business.timezone = "Pacific/Auckland"
    house.business.save()
    visit = under_way(house.farm, house.van, datetime(2026, 3, 3, 20, tzinfo=UTC))  # the 4th in Auckland
    finish(visit, house.trimmer)
    due = routine_due(DAY + timedelta(days=1), house.farm.routine_interval_days, DAY)
    sweep_routine(scope=house.scope, today=due.first, at=NOON)
    assert wishes(house, "routine").get().due_from == due.first
