"""Of the proposals for a week only one stands."""

from datetime import timedelta

from tests.factories import MONDAY, wanted
from visits.models import WeekPlan, WeekPlanState
from visits.services.set_plans_aside import set_other_plans_aside


def row(house, state, monday=MONDAY):
    return WeekPlan.objects.create(
        business=house.business,
        monday=monday,
        state=state,
        problem={},
        asked_at=wanted(house.farm).asked_at,
        asked_by=house.owner,
    )


def test_other_proposals_of_the_week_are_set_aside_and_nothing_else(house):
    mine, other = row(house, WeekPlanState.PROPOSED), row(house, WeekPlanState.PROPOSED)
    diary, thinking = row(house, WeekPlanState.ACCEPTED), row(house, WeekPlanState.THINKING)
    next_week = row(house, WeekPlanState.PROPOSED, MONDAY + timedelta(days=7))
    assert set_other_plans_aside(week_plan=mine) == 1
    states = dict(WeekPlan.objects.within(house.scope).values_list("pk", "state"))
    assert states == {
        mine.pk: "proposed",
        other.pk: "set_aside",
        diary.pk: "accepted",
        thinking.pk: "thinking",
        next_week.pk: "proposed",
    }
