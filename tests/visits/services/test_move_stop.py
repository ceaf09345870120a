"""A stop moved by hand: a new plan that keeps the rules, and the one before kept."""

from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import make_house, wanted
from tests.visits.services.by_hand import hand_week
from tests.visits.services.conftest import SUNDAY_EVENING
from trimops.kernel.errors import NotFound
from trimops.tenancy.errors import MixedBusinesses
from visits.domain.planning.audit import audit_week
from visits.domain.visit_states import VisitReason
from visits.models import Visit, WeekPlan
from visits.selectors.plan_in_force import plan_in_force
from visits.services.accept_week_plan import accept_week_plan
from visits.services.bring_back_plan import bring_back_plan
from visits.services.call_off_visit import call_off_visit
from visits.services.confirm_visit import confirm_visit
from visits.services.lock_stop import LockOn, lock_stop
from visits.services.move_stop import PlanWasChanged, StopCannotGo, StopMove, move_stop

LATER = SUNDAY_EVENING + timedelta(minutes=5)


@pytest.fixture
def week(db):
    return hand_week()


def move(week, visit, shift="", position=0, plan=None, at=LATER):
    return move_stop(
        week_plan=plan or week.plan,
        move=StopMove(visit, shift, position, "Moved"),
        at=at,
        by=week.house.trimmer,
    )


def stored(week, plan):
    return WeekPlan.objects.within(week.house.scope).get(pk=plan.pk)


def test_the_stop_lies_where_it_was_dropped_and_the_new_plan_passes_the_audit(week):
    visit, shift = week.visits[0], week.other_shift(week.visits[0])
    version = stored(week, move(week, visit, shift))
    assert week.spot(visit, version) == (shift, 0)
    assert audit_week(version.problem, version.plan) == []
    assert (version.state, version.made_by, version.what_changed) == ("proposed", "hand", "Moved")


def test_the_others_keep_their_day_and_order(week):
    moved, *others = week.visits
    version = move(week, moved, week.other_shift(moved))
    assert {week.spot(v)[0] for v in others} == {week.spot(v, version)[0] for v in others}


def test_the_plan_before_is_set_aside_and_can_be_brought_back(week):
    version = move(week, week.visits[0], week.other_shift(week.visits[0]))
    assert (stored(week, week.plan).state, version.follows) == ("set_aside", week.plan)
    back = bring_back_plan(week_plan=version.follows, at=LATER, by=week.house.trimmer)
    assert plan_in_force(week.house.scope, week.plan.monday) == back == week.plan


def test_the_diary_stays_as_it_is_until_the_change_is_accepted(week):
    visit = week.visits[0]
    accepted = accept_week_plan(week_plan=week.plan, at=LATER, by=week.house.owner)
    before = Visit.objects.within(week.house.scope).get(pk=visit.pk).planned_start
    version = move(week, visit, week.other_shift(visit), plan=accepted)
    assert stored(week, accepted).state == "accepted"
    assert Visit.objects.within(week.house.scope).get(pk=visit.pk).planned_start == before
    accept_week_plan(week_plan=version, at=LATER, by=week.house.owner)
    row = Visit.objects.within(week.house.scope).get(pk=visit.pk)
    assert f"{row.planned_start:%Y-%m-%d}" == week.other_shift(visit)[-10:]
    assert stored(week, accepted).state == "set_aside"


def test_a_stop_taken_out_is_left_out_by_hand_and_can_be_put_in_again(week):
    visit, (shift, position) = week.visits[0], week.spot(week.visits[0])
    out = move(week, visit)
    (left,) = stored(week, out).plan["left_out"]
    assert (left["job"], left["detail"]) == (f"visit-{visit.pk}", "Taken out by hand; it would fit.")
    assert audit_week(out.problem, out.plan) == []
    again = move(week, visit, shift, position, plan=out)
    assert week.spot(visit, again) == (shift, position)
    assert again.left_by_hand == {}
    assert again.plan["cost"] == week.plan.plan["cost"]


def test_what_was_taken_out_stays_out_when_another_stop_is_moved(week):
    first, second = week.visits[:2]
    out = move(week, first)
    version = move(week, second, week.other_shift(second), plan=out)
    assert week.spot(first, version) is None
    assert list(version.left_by_hand) == [f"visit-{first.pk}"]


def test_an_urgent_visit_cannot_be_taken_out(db):
    week = hand_week(reason=VisitReason.URGENT)
    with pytest.raises(StopCannotGo, match="must be planned"):
        move(week, week.visits[0])


def test_a_place_that_breaks_a_rule_is_refused_with_the_rule_and_nothing_changes(week):
    visit = week.visits[0]
    lock_stop(week_plan=week.plan, visit=visit, on=LockOn.DAY, at=LATER, by=week.house.owner)
    with pytest.raises(StopCannotGo, match="Low Croft is locked to its van and day"):
        move(week, visit, week.other_shift(visit))
    assert stored(week, week.plan).state == "proposed"


def test_a_stop_that_keeps_its_hour_is_let_go_first(week):
    visit = week.visits[0]
    lock_stop(week_plan=week.plan, visit=visit, on=LockOn.HOUR, at=LATER, by=week.house.owner)
    with pytest.raises(StopCannotGo, match="It keeps its hour"):
        move(week, visit, week.other_shift(visit))


def test_dropping_it_where_it_is_makes_no_new_plan(week):
    assert move(week, week.visits[0], *week.spot(week.visits[0])).pk == week.plan.pk


def test_a_place_that_is_not_there_is_refused(week):
    visit = week.visits[0]
    with pytest.raises(StopCannotGo, match="no such place"):
        move(week, visit, week.other_shift(visit), 7)
    with pytest.raises(NotFound):
        move(week, visit, "van-0-2026-03-02")


def test_a_day_that_has_begun_is_left_alone(week):
    visit = week.visits[0]
    (shift, _), other = week.spot(visit), week.other_shift(visit)
    begun = datetime.fromisoformat(f"{max(shift[-10:], other[-10:])}T09:00:00").replace(tzinfo=UTC)
    with pytest.raises(StopCannotGo, match="has begun"):
        move(week, visit, other, at=begun)


def test_whoever_was_slower_is_told_so(week):
    visit = week.visits[0]
    move(week, visit, week.other_shift(visit))
    with pytest.raises(PlanWasChanged):
        move(week, visit)


def hour_of(plan, visit):
    stops = (s for d in plan.plan["shifts"] for s in d["stops"] if s["job"] == f"visit-{visit.pk}")
    return datetime.fromisoformat(next(stops)["start"])


def test_a_confirmed_hour_is_not_moved_by_the_move_of_another(week):
    first, last = week.visits[:2]
    used = {shift["id"] for shift in week.plan.plan["shifts"]}
    free, further = [s["id"] for s in week.plan.problem["shifts"] if s["id"] not in used][:2]
    plan = move(week, first, free, plan=move(week, last, free))
    loose = move(week, first, further, plan=plan)
    assert hour_of(loose, last) != hour_of(plan, last), "or nothing is proven"
    back = bring_back_plan(week_plan=plan, at=LATER, by=week.house.owner)
    accepted = accept_week_plan(week_plan=back, at=LATER, by=week.house.owner)
    row = Visit.objects.within(week.house.scope).get(pk=last.pk)
    hour = confirm_visit(visit=row, at=LATER, by=week.house.owner).planned_start
    assert hour_of(move(week, first, further, plan=accepted), last) == hour


def test_a_visit_called_off_since_is_not_in_the_new_plan(week):
    gone, visit = week.visits[:2]
    call_off_visit(visit=gone, because="Snow", at=LATER, by=week.house.owner)
    version = move(week, visit, week.other_shift(visit))
    assert week.spot(gone, version) is None
    assert f"visit-{gone.pk}" not in [job["id"] for job in version.problem["jobs"]]


def test_a_visit_of_another_business_is_refused(week):
    theirs = wanted(make_house("Fell & Beck").farm)
    with pytest.raises(MixedBusinesses):
        move(week, theirs)
