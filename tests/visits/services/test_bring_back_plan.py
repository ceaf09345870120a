"""The way back to an earlier plan of the week."""

from datetime import timedelta

import pytest

from tests.visits.services.by_hand import hand_week
from tests.visits.services.conftest import SUNDAY_EVENING
from visits.models import Visit, WeekPlan
from visits.selectors.plan_in_force import earlier_plans, plan_in_force
from visits.services.accept_week_plan import accept_week_plan
from visits.services.bring_back_plan import PlanCannotComeBack, bring_back_plan
from visits.services.confirm_visit import confirm_visit
from visits.services.move_stop import StopMove, move_stop
from visits.services.plan_visit import plan_visit

LATER = SUNDAY_EVENING + timedelta(minutes=5)


@pytest.fixture
def week(db):
    return hand_week()


def moved(week, plan):
    visit = week.visits[0]
    move = StopMove(visit, week.other_shift(visit), 0)
    return move_stop(week_plan=plan, move=move, at=LATER, by=week.house.owner)


def back(week, plan):
    return bring_back_plan(week_plan=plan, at=LATER, by=week.house.owner)


def states(week):
    return dict(WeekPlan.objects.within(week.house.scope).values_list("pk", "state"))


def test_the_earlier_plan_is_proposed_and_the_later_one_kept_beside(week):
    version = moved(week, week.plan)
    back(week, week.plan)
    assert states(week) == {week.plan.pk: "proposed", version.pk: "set_aside"}
    assert earlier_plans(week.house.scope, week.plan) == [version]


def test_the_plan_in_the_diary_comes_back_by_shedding_the_proposal(week):
    accepted = accept_week_plan(week_plan=week.plan, at=LATER, by=week.house.owner)
    version = moved(week, accepted)
    back(week, accepted)
    assert states(week) == {accepted.pk: "accepted", version.pk: "set_aside"}
    assert plan_in_force(week.house.scope, week.plan.monday) == accepted


def test_a_plan_that_still_stands_has_nothing_to_come_back_from(week):
    with pytest.raises(PlanCannotComeBack, match="not one that was set aside"):
        back(week, week.plan)


def test_a_plan_that_a_promise_made_since_has_broken_does_not_come_back(week):
    visit = week.visits[0]
    moved(week, week.plan)
    start = SUNDAY_EVENING.replace(day=6, hour=8, minute=0)
    hour = plan_visit(visit=visit, van=week.house.van, start=start, at=LATER, by=week.house.owner)
    confirm_visit(visit=hour, at=LATER, by=week.house.owner)
    assert Visit.objects.within(week.house.scope).get(pk=visit.pk).state == "confirmed"
    with pytest.raises(PlanCannotComeBack, match="promised or locked since"):
        back(week, week.plan)
