"""Two that thought about one plan propose it once, and what was taken meanwhile stays as it is."""

import pytest

from tests.factories import MONDAY, NOON
from visits.models import WeekPlan
from visits.services.propose_plan import fail_plan, propose_plan

TAKEN = {"shifts": ["as it is in the diary"]}


@pytest.fixture
def plan(house):
    return WeekPlan.objects.create(
        business=house.business, monday=MONDAY, problem={"jobs": []}, asked_at=NOON, asked_by=house.owner
    )


def stored(plan):
    return WeekPlan.objects.within(plan.scope).get(pk=plan.pk)


def test_what_was_thought_out_is_the_one_proposal_of_its_week(house, plan):
    older = WeekPlan.objects.create(
        business=house.business,
        monday=MONDAY,
        problem={},
        state="proposed",
        asked_at=NOON,
        asked_by=house.owner,
    )
    plan.plan = {"shifts": []}
    assert propose_plan(week_plan=plan, at=NOON)
    row = stored(plan)
    assert (row.state, row.plan, row.percent, row.finished_at) == ("proposed", {"shifts": []}, 100, NOON)
    assert stored(older).state == "set_aside"


@pytest.mark.parametrize("state", ["proposed", "accepted", "failed", "set_aside"])
def test_whoever_comes_second_changes_nothing(plan, state):
    WeekPlan.objects.within(plan.scope).filter(pk=plan.pk).update(state=state, plan=TAKEN)
    plan.plan = {"shifts": ["another"]}
    assert not propose_plan(week_plan=plan, at=NOON)
    assert fail_plan(week_plan=plan, why="The line broke.", at=NOON).state == state
    assert (stored(plan).state, stored(plan).plan, stored(plan).failure) == (state, TAKEN, "")


def test_what_nothing_came_of_says_why(plan):
    assert fail_plan(week_plan=plan, why="No van.", at=NOON).failure == "No van."
    assert (stored(plan).state, stored(plan).finished_at) == ("failed", NOON)
