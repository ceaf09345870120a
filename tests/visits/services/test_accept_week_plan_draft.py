"""A plan that was proposed before a draft list changed."""

from datetime import timedelta

import pytest

from tests.factories import TUESDAY_TEN, confirmed, make_cow, wanted
from tests.visits.services.conftest import SUNDAY_EVENING
from visits.selectors.draft_view import changed_list_time
from visits.services.accept_week_plan import PlanIsStale, accept_week_plan
from visits.services.add_draft_cow import add_draft_cow

LATER = SUNDAY_EVENING + timedelta(hours=1)


def accept(plan, house):
    return accept_week_plan(week_plan=plan, at=LATER, by=house.owner)


def add(visit, house, cows):
    for number in range(cows):
        cow = make_cow(house.farm, f"9{number}")
        visit = add_draft_cow(visit=visit, cow=cow, why="limps", at=SUNDAY_EVENING, by=house.client)
    return visit


def test_a_list_that_grew_since_has_the_minutes_of_the_plan_so_that_the_diary_holds(house, proposed):
    visit = wanted(house.farm, head_count=2)
    plan = proposed()
    assert add(visit, house, 4).expected_minutes == visit.expected_minutes + 14
    accept(plan, house)
    visit.refresh_from_db()
    assert visit.planned_finish - visit.planned_start == timedelta(minutes=visit.expected_minutes)
    assert visit.head_count == 4
    time = changed_list_time(visit, LATER)
    assert time.minutes == visit.expected_minutes + 14


def test_a_confirmed_visit_that_got_longer_since_makes_the_plan_stale(house, proposed):
    visit = confirmed(house.farm, house.van, TUESDAY_TEN, head_count=2)
    plan = proposed()
    assert add(visit, house, 4).planned_finish > visit.planned_finish
    with pytest.raises(PlanIsStale, match="got longer by its draft list"):
        accept(plan, house)
