"""Of an evening: a proposal where there is something to plan that nobody is at, and never twice the same."""

from datetime import UTC, datetime, time, timedelta

import pytest
from django.utils import timezone

from tests.factories import MONDAY, confirmed, make_farm, make_house, wanted
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.visit_states import VisitState
from visits.models import DayOff, ShiftPattern, Visit, WeekPlan, WeekPlanState
from visits.services.accept_week_plan import accept_week_plan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.call_off_visit import call_off_visit
from visits.services.drop_week_plan import drop_week_plan
from visits.services.propose_week import propose_week
from visits.services.think_week_plan import think_week_plan
from visits.tasks import propose_week_task

MONDAY_EVENING = datetime(2026, 3, 2, 18, 30, tzinfo=UTC)
DAY = timedelta(days=1)
NEXT_MONDAY = MONDAY + 7 * DAY


@pytest.fixture
def house(db):
    house = make_house()
    house.business.proposes_weeks = True
    house.business.save()
    return house


def propose(house, at=MONDAY_EVENING):
    """As the evening's errand and the planner's after it."""
    plan = propose_week(business=house.business, at=at)
    return plan and think_week_plan(week_plan=plan, limits=SolveLimits(iterations=50), at=at)


def plans(house):
    return WeekPlan.objects.within(house.scope).order_by("asked_at", "id")


def test_a_wanted_visit_is_proposed_and_stays_out_of_the_diary(house):
    visit = wanted(house.farm)
    plan = propose(house)
    assert (plan.monday, plan.state, plan.asked_by, plan.asker) == (
        MONDAY,
        WeekPlanState.PROPOSED,
        None,
        "the evening’s look ahead",
    )
    starts = [stop["start"] for shift in plan.plan["shifts"] for stop in shift["stops"]]
    assert len(starts) == 1
    assert min(starts) >= "2026-03-03"
    assert Visit.objects.within(house.scope).get(pk=visit.pk).visit_state is VisitState.WANTED


def test_a_business_that_does_not_want_it_is_left_alone(house):
    house.business.proposes_weeks = False
    wanted(house.farm)
    assert propose(house) is None


def test_with_nothing_wanted_nothing_is_asked(house):
    confirmed(house.farm, house.van)
    assert propose(house) is None


def test_where_no_van_goes_out_nothing_is_asked(house):
    wanted(house.farm)
    for days in range(1, 14):
        DayOff.objects.create(
            business=house.business, van=house.van, day=MONDAY + days * DAY, noted_at=MONDAY_EVENING
        )
    assert propose(house) is None


def test_the_same_evening_and_the_next_one_ask_nothing_twice(house):
    wanted(house.farm)
    propose(house)
    assert propose(house) is None
    # Tuesday has gone by, the visit is not taken yet: the proposal still says what there is to say.
    assert propose(house, MONDAY_EVENING + DAY) is None
    assert plans(house).count() == 1


def test_a_new_visit_makes_a_new_proposal_in_place_of_the_old_one(house):
    wanted(house.farm)
    first = propose(house)
    wanted(make_farm(house.business, "High Croft", by=house.owner))
    second = propose(house, MONDAY_EVENING + DAY)
    assert [(plan.pk, plan.state) for plan in plans(house)] == [
        (first.pk, WeekPlanState.SET_ASIDE),
        (second.pk, WeekPlanState.PROPOSED),
    ]


def test_a_proposal_that_was_dropped_does_not_come_back_for_the_same_work(house):
    wanted(house.farm)
    drop_week_plan(week_plan=propose(house), at=MONDAY_EVENING, by=house.owner)
    assert propose(house, MONDAY_EVENING + DAY) is None


def test_what_a_person_asked_for_and_has_not_taken_is_left_alone(house):
    wanted(house.farm)
    asked = ask_week_plan(business=house.business, monday=MONDAY, at=MONDAY_EVENING, by=house.owner)
    assert propose(house) is None
    think_week_plan(week_plan=asked, limits=SolveLimits(iterations=50), at=MONDAY_EVENING)
    wanted(make_farm(house.business, "High Croft", by=house.owner))
    assert propose(house, MONDAY_EVENING + DAY) is None


def test_under_a_plan_in_the_diary_a_visit_called_off_asks_for_another(house):
    wanted(house.farm)
    later = wanted(make_farm(house.business, "High Croft", by=house.owner), due_from=MONDAY + 3 * DAY)
    plan = accept_week_plan(week_plan=propose(house), at=MONDAY_EVENING, by=house.owner)
    assert propose(house, MONDAY_EVENING + timedelta(minutes=5)) is None
    call_off_visit(visit=later, because="Sold the herd", at=MONDAY_EVENING, by=house.owner)
    anew = propose(house, MONDAY_EVENING + timedelta(minutes=10))
    assert (anew.state, plans(house).get(pk=plan.pk).state) == (
        WeekPlanState.PROPOSED,
        WeekPlanState.ACCEPTED,
    )


@pytest.mark.parametrize(
    ("days", "expected"),
    [(3, None), (4, NEXT_MONDAY), (5, NEXT_MONDAY), (6, NEXT_MONDAY)],
)
def test_from_friday_on_the_next_week_is_looked_at_too(house, days, expected):
    wanted(house.farm, due_from=NEXT_MONDAY, due_until=NEXT_MONDAY + 2 * DAY)
    plan = propose_week(business=house.business, at=MONDAY_EVENING + days * DAY)
    assert (plan.monday if plan else None) == expected


def test_one_week_at_a_time(house):
    """On Friday, with a van that goes out on Saturday: first the rest of this week, then the next."""
    make_shift_on_saturday(house)
    wanted(house.farm)
    wanted(make_farm(house.business, "High Croft", by=house.owner), due_from=NEXT_MONDAY)
    friday = MONDAY_EVENING + 4 * DAY
    assert propose(house, friday).monday == MONDAY
    assert propose(house, friday + timedelta(minutes=1)).monday == NEXT_MONDAY
    assert propose(house, friday + timedelta(minutes=2)) is None


def make_shift_on_saturday(house):
    saturday = {"weekday": 5, "starts": time(8), "ends": time(17)}
    ShiftPattern.objects.create(business=house.business, van=house.van, **saturday)


def test_the_job_leaves_the_thinking_to_another_errand(house, monkeypatch):
    wanted(house.farm)
    monkeypatch.setattr(timezone, "now", lambda: MONDAY_EVENING)
    for _ in range(2):
        propose_week_task(house.business.pk)
    assert [plan.state for plan in plans(house)] == [WeekPlanState.THINKING]
