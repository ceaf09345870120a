"""Somebody wants the week planned."""

from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import MONDAY, confirmed, finished, make_house, wanted
from visits.models import DayOff, WeekPlan
from visits.services.ask_week_plan import NothingToPlan, ask_week_plan

SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)


def ask(house, monday=MONDAY, at=SUNDAY_EVENING):
    return ask_week_plan(business=house.business, monday=monday, at=at, by=house.office)


def test_the_problem_is_put_down_as_it_stands(house):
    visit = wanted(house.farm)
    plan = WeekPlan.objects.within(house.scope).get(pk=ask(house).pk)
    assert (plan.monday, plan.state, plan.asked_by, plan.percent) == (MONDAY, "thinking", house.office, 0)
    assert [job["id"] for job in plan.problem["jobs"]] == [f"visit-{visit.pk}"]
    assert len(plan.problem["shifts"]) == 5


def test_a_confirmed_visit_is_fixed_to_its_van_and_hour(house):
    visit = confirmed(house.farm, house.van)
    (job,) = ask(house).problem["jobs"]
    assert job["fixed"]["shift"] == f"van-{house.van.pk}-2026-03-03"
    assert datetime.fromisoformat(job["fixed"]["start"]) == visit.planned_start


def test_the_job_starts_once_the_wish_is_committed(house, django_capture_on_commit_callbacks):
    wanted(house.farm)
    with django_capture_on_commit_callbacks() as waiting:
        ask(house)
    assert len(waiting) == 1


def test_shifts_that_have_begun_and_days_off_are_left_out(house):
    wanted(house.farm)
    DayOff.objects.create(business=house.business, van=house.van, day=MONDAY + timedelta(days=4))
    plan = ask(house, at=datetime(2026, 3, 3, 9, tzinfo=UTC))
    assert [shift["id"][-10:] for shift in plan.problem["shifts"]] == ["2026-03-04", "2026-03-05"]


def test_a_week_without_a_wish_is_refused(house):
    finished(house.farm, house.van)
    wanted(make_house("Fell & Beck").farm)
    with pytest.raises(NothingToPlan, match="No visit is wanted"):
        ask(house)
    assert not WeekPlan.objects.within(house.scope).exists()


def test_a_week_in_which_no_van_goes_out_is_refused(house):
    wanted(house.farm, due_until=MONDAY + timedelta(days=30))
    for day in range(5):
        DayOff.objects.create(business=house.business, van=house.van, day=MONDAY + timedelta(days=day))
    with pytest.raises(NothingToPlan, match="No van goes out"):
        ask(house)
