"""What is said to a farm that rings up."""

from datetime import timedelta
from decimal import Decimal

import pytest

from tests.factories import MONDAY, confirmed, make_farm, planned
from tests.visits.services.offers import TUESDAY, at, offers, urgent
from visits.domain.planning_figures import PlanningFigures
from visits.domain.visit_states import VisitReason
from visits.models import DayOff, Visit

LONG = {"head_count": 30, "due_until": MONDAY + timedelta(days=1)}


@pytest.fixture
def croft(house):
    return make_farm(house.business, "High Croft", by=house.owner)


def only_tuesday(house):
    """No other day of the week has a van."""
    for day in (0, 2, 3, 4):
        DayOff.objects.create(business=house.business, van=house.van, day=MONDAY + timedelta(days=day))


def test_an_empty_week_has_a_place_on_each_day_and_says_what_it_adds(house):
    found = offers(house.farm)
    assert [line.day.weekday() for line in found.fits] == [0, 1, 2, 3, 4]
    first = found.fits[0]
    minutes = first.minutes - 69
    assert 0 < minutes < 120
    assert first.money == round(first.money, 2) > Decimal(20)
    assert first.metres > 20_000
    assert (found.moves, found.askings, found.put_offs, found.why, found.broken) == ([], (), (), (), [])


def test_each_place_says_what_it_comes_after(house, croft):
    planned(croft, house.van, at("12:00"), head_count=2)
    found = [line.after for line in offers(house.farm).fits if line.day == TUESDAY]
    assert sorted(found) == ["", "High Croft"]


def test_days_after_the_last_one_are_offered_as_late(house):
    assert [line.late for line in offers(house.farm).fits] == [0, 0, 0, 1, 2]


def test_the_weeks_after_are_looked_at_too(house):
    days = {line.day for line in offers(house.farm, weeks=2).fits}
    assert max(days) == MONDAY + timedelta(days=11)


def test_spans_are_on_five_full_minutes(house):
    for line in offers(house.farm).fits:
        assert line.first <= line.last
        assert {line.first.minute % 5, line.last.minute % 5, line.first.second, line.last.second} == {0}


def test_a_visit_that_would_move_is_named_with_where_from_and_where_to(house, croft):
    filler = planned(croft, house.van, at("09:30"), head_count=28)
    found = offers(house.farm, urgent(head_count=30))
    assert all(line.day != TUESDAY for line in found.fits)
    line = next(line for line in found.moves if line.day == TUESDAY)
    assert (line.moved.visit, line.moved.start, line.moved.told) == (filler, at("09:30"), False)
    assert line.moved.to_start.date() == line.to.day != TUESDAY
    assert (line.moved.van, line.moved.to_van) == (house.van, house.van)


def test_a_visit_whose_farm_was_told_its_hour_weighs_more(house, croft):
    filler = planned(croft, house.van, at("09:30"), head_count=28)
    wish = urgent(head_count=30)
    untold = next(line for line in offers(house.farm, wish).moves if line.day == TUESDAY)
    Visit.objects.within(house.scope).filter(pk=filler.pk).update(hour_told=filler.planned_start)
    told = next(line for line in offers(house.farm, wish).moves if line.day == TUESDAY)
    assert (untold.moved.told, told.moved.told) == (False, True)
    assert told.weight - untold.weight == pytest.approx(PlanningFigures().change_told_hour)
    assert told.money == untold.money


def test_a_move_is_not_shown_where_the_day_has_cheaper_room_without(house, croft):
    planned(croft, house.van, at("09:30"), head_count=2)
    assert [line.day for line in offers(house.farm).moves if line.day == TUESDAY] == []


def test_where_nothing_comes_in_time_a_confirmed_farm_may_be_asked(house, croft):
    DayOff.objects.create(business=house.business, van=house.van, day=MONDAY)
    firm = confirmed(croft, house.van, at("09:30"), head_count=28)
    found = offers(house.farm, urgent(**LONG))
    assert not found.is_in_time
    (asking,) = found.askings
    assert (asking.moved.visit, asking.moved.told, asking.day) == (firm, True, TUESDAY)
    assert asking.moved.to_start.date() > TUESDAY
    assert found.put_offs == []


def test_where_nothing_comes_in_time_a_planned_visit_may_wait_for_another_week(house, croft):
    only_tuesday(house)
    other = planned(croft, house.van, at("09:30"), head_count=28)
    found = offers(house.farm, urgent(**LONG))
    assert all(line.late for line in (*found.fits, *found.moves))
    assert (found.askings, found.put_offs[0].put_off) == ([], other)
    assert found.why == [(MONDAY, "There is no time left for it beside the other jobs of the week.")]


def test_a_visit_too_long_for_any_day_is_told_so(house):
    found = offers(house.farm, urgent(head_count=200, due_until=MONDAY + timedelta(days=4)))
    assert (found.fits, found.moves, found.put_offs) == ([], [], [])
    assert found.why[0][1].startswith("The farm has no hours left")


def test_an_urgent_visit_of_last_week_or_a_called_off_one_takes_no_room(house, croft):
    planned(croft, house.van, at("09:30"), head_count=28, reason=VisitReason.ROUTINE)
    before = [line.first for line in offers(house.farm).fits]
    Visit.objects.within(house.scope).update(state="called_off")
    assert [line.first for line in offers(house.farm).fits] != before
