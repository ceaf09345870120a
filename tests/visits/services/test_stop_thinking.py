"""The planner is told to stop, and keeps the best week so far."""

import time
from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import MONDAY, make_farm, wanted
from visits.domain.planning.audit import audit_week
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.services import think_week_plan as thinking
from visits.services.ask_week_plan import ask_week_plan
from visits.services.stop_thinking import stop_thinking
from visits.services.think_week_plan import think_week_plan

SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)
LONG = SolveLimits(seconds=60)


@pytest.fixture
def asked(house):
    for n in range(12):
        wanted(make_farm(house.business, f"Farm {n}", by=house.owner, latitude=54 + n / 50))
    return ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)


def stored(house, plan):
    return WeekPlan.objects.within(house.scope).get(pk=plan.pk)


def test_told_before_it_begins_it_proposes_the_first_week_it_finds(house, asked):
    stop_thinking(week_plan=asked, at=SUNDAY_EVENING)
    begun = time.monotonic()
    think_week_plan(week_plan=asked, limits=LONG, at=SUNDAY_EVENING)
    assert time.monotonic() - begun < 30
    plan = stored(house, asked)
    assert (plan.state, audit_week(plan.problem, plan.plan)) == ("proposed", [])


def test_told_while_it_thinks_it_ends_soon_with_what_it_has(house, asked, monkeypatch):
    """The flag is set as the first word of progress is written down, as another process would."""
    tell = thinking._tell

    def tell_and_stop(week_plan, *args):
        tell(week_plan, *args)
        stop_thinking(week_plan=week_plan, at=SUNDAY_EVENING)

    monkeypatch.setattr(thinking, "_tell", tell_and_stop)
    begun = time.monotonic()
    think_week_plan(week_plan=asked, limits=LONG, at=SUNDAY_EVENING)
    assert time.monotonic() - begun < 30
    plan = stored(house, asked)
    assert (plan.state, plan.stop_asked_at) == ("proposed", SUNDAY_EVENING)


def test_a_second_word_changes_nothing(house, asked):
    stop_thinking(week_plan=asked, at=SUNDAY_EVENING)
    stop_thinking(week_plan=asked, at=SUNDAY_EVENING + timedelta(minutes=1))
    assert stored(house, asked).stop_asked_at == SUNDAY_EVENING


def test_a_planner_that_has_gone_away_is_given_up_when_asked_again(house, asked):
    stop_thinking(week_plan=asked, at=SUNDAY_EVENING)
    stop_thinking(week_plan=asked, at=SUNDAY_EVENING + timedelta(minutes=3))
    plan = stored(house, asked)
    assert (plan.state, plan.plan) == ("failed", None)
    assert "Ask for the plan again" in plan.failure


def test_a_plan_that_is_found_already_is_left_as_it_is(house, proposed):
    wanted(house.farm)
    plan = proposed()
    before = WeekPlan.objects.within(house.scope).values().get(pk=plan.pk)
    stop_thinking(week_plan=plan, at=SUNDAY_EVENING)
    assert WeekPlan.objects.within(house.scope).values().get(pk=plan.pk) == before
