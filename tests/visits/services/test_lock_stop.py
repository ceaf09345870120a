"""A visit locked to where the plan has it stays there when the week is planned again."""

from datetime import datetime, timedelta

import pytest

from tests.factories import make_house, wanted
from tests.visits.services.by_hand import hand_week
from tests.visits.services.conftest import SUNDAY_EVENING
from trimops.tenancy.errors import MixedBusinesses
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import PlanLock, Visit
from visits.selectors.week_problem import week_problem
from visits.services.accept_week_plan import accept_week_plan
from visits.services.ask_week_plan import ask_week_plan
from visits.services.confirm_visit import confirm_visit
from visits.services.lock_stop import CannotLock, LockOn, lock_stop
from visits.services.move_stop import StopMove, move_stop
from visits.services.think_week_plan import think_week_plan
from visits.services.unlock_stop import unlock_stop

LATER = SUNDAY_EVENING + timedelta(minutes=5)


@pytest.fixture
def week(db):
    return hand_week()


def lock(week, visit, on, plan=None):
    return lock_stop(week_plan=plan or week.plan, visit=visit, on=on, at=LATER, by=week.house.owner)


def elsewhere(week, visit):
    """The week with that visit on another day, where the planner alone would not have it."""
    move = StopMove(visit, week.other_shift(visit), 0)
    return move_stop(week_plan=week.plan, move=move, at=LATER, by=week.house.owner)


def again(week):
    plan = ask_week_plan(business=week.house.business, monday=week.plan.monday, at=LATER, by=week.house.owner)
    return think_week_plan(week_plan=plan, limits=SolveLimits(iterations=20), at=LATER)


def start_of(plan, visit):
    stops = (s for d in plan.plan["shifts"] for s in d["stops"] if s["job"] == f"visit-{visit.pk}")
    return datetime.fromisoformat(next(stops)["start"])


def test_a_lock_to_the_hour_is_kept_to_the_minute(week):
    visit = week.visits[0]
    version = elsewhere(week, visit)
    kept = lock(week, visit, LockOn.HOUR, version)
    assert kept.start == start_of(version, visit)
    planned = again(week)
    assert week.spot(visit, planned)[0] == week.other_shift(visit)
    assert start_of(planned, visit) == kept.start


def test_a_lock_to_the_day_keeps_van_and_day(week):
    visit = week.visits[0]
    lock(week, visit, LockOn.DAY, elsewhere(week, visit))
    assert week.spot(visit, again(week))[0] == week.other_shift(visit)


def test_without_the_lock_the_planner_takes_it_back(week):
    """Or the two tests above would prove nothing."""
    visit = week.visits[0]
    elsewhere(week, visit)
    assert week.spot(visit, again(week))[0] != week.other_shift(visit)


def test_a_second_lock_takes_the_place_of_the_first(week):
    visit = week.visits[0]
    lock(week, visit, LockOn.HOUR)
    lock(week, visit, LockOn.DAY)
    (row,) = PlanLock.objects.within(week.house.scope)
    assert (row.start, row.shift) == (None, week.spot(visit)[0])


def test_a_confirmed_visit_needs_no_lock(week):
    visit = week.visits[0]
    accept_week_plan(week_plan=week.plan, at=LATER, by=week.house.owner)
    row = Visit.objects.within(week.house.scope).get(pk=visit.pk)
    confirm_visit(visit=row, at=LATER, by=week.house.owner)
    with pytest.raises(CannotLock, match="stays where it is without a lock"):
        lock(week, row, LockOn.DAY)


def test_a_confirmed_hour_goes_before_a_lock_made_earlier(week):
    visit = week.visits[0]
    lock(week, visit, LockOn.DAY, elsewhere(week, visit))
    accept_week_plan(
        week_plan=week.plan.__class__.objects.within(week.house.scope).get(state="proposed"),
        at=LATER,
        by=week.house.owner,
    )
    row = Visit.objects.within(week.house.scope).get(pk=visit.pk)
    hour = confirm_visit(visit=row, at=LATER, by=week.house.owner).planned_start
    jobs = week_problem(week.house.business, week.plan.monday, LATER)["jobs"]
    fixed = next(job for job in jobs if job["id"] == f"visit-{visit.pk}")["fixed"]
    assert datetime.fromisoformat(fixed["start"]) == hour


def test_what_is_left_out_cannot_be_locked(week):
    visit = week.visits[0]
    out = move_stop(week_plan=week.plan, move=StopMove(visit), at=LATER, by=week.house.owner)
    with pytest.raises(CannotLock, match="put it in first"):
        lock(week, visit, LockOn.DAY, out)


def test_an_unlocked_stop_may_be_moved_though_the_plan_was_made_under_the_lock(week):
    visit = week.visits[0]
    lock(week, visit, LockOn.HOUR)
    planned = again(week)
    unlock_stop(visit=visit)
    move = StopMove(visit, week.other_shift(visit), 0)
    version = move_stop(week_plan=planned, move=move, at=LATER, by=week.house.owner)
    assert week.spot(visit, version) == (week.other_shift(visit), 0)


def test_a_visit_of_another_business_is_refused(week):
    theirs = wanted(make_house("Fell & Beck").farm)
    with pytest.raises(MixedBusinesses):
        lock(week, theirs, LockOn.DAY)
