"""Something happened: the week is planned again, and what is promised is kept."""

from datetime import datetime, timedelta

import pytest

from tests.factories import MONDAY, NOON, make_farm, planned
from tests.visits.services.changed_week import SEVEN, at
from visits.domain.planning.audit import audit_week
from visits.domain.planning.replan.plan_in_force import Promise
from visits.domain.planning.replan.stored_change import read_change
from visits.models import VanOut, Visit, WeekPlan
from visits.selectors.week_under_way import LateWord, week_under_way
from visits.services.note_what_happened import HappeningMakesNoSense, OffWord
from visits.services.replan_week import replan_week
from visits.services.start_visit import start_visit


def jobs_of(plan):
    return {job["id"]: job for job in plan.problem["jobs"]}


def test_what_happened_and_what_was_promised_are_put_down(changed):
    plan = changed.asked(changed.out(until=at(4, 12)))
    change = read_change(plan.change)
    assert plan.because == "Van 1: crush broken, Tue 3 Mar 07:00 to Wed 4 Mar 12:00"
    promises = {entry.job: entry.promise for entry in change.in_force}
    assert promises == {
        f"visit-{changed.visits[name].pk}": promise
        for name, promise in [
            ("first", Promise.PLANNED),
            ("told", Promise.TOLD),
            ("firm", Promise.CONFIRMED),
            ("other", Promise.PLANNED),
        ]
    }
    assert (plan.state, change.to_farms) == ("thinking", "our kit has broken down")


def test_the_crush_is_broken_and_the_other_van_takes_the_week(changed):
    plan = changed.planned_again(changed.out())
    assert plan.state == "proposed"
    assert audit_week(plan.problem, plan.plan) == []
    assert not any(shift["id"].startswith(f"van-{changed.house.van.pk}-") for shift in plan.plan["shifts"])
    assert changed.stop(plan, "other")[0] == f"van-{changed.second.pk}-2026-03-04"
    assert read_change(plan.change).asks == (f"visit-{changed.visits['firm'].pk}",)


def test_a_confirmed_visit_that_can_be_kept_keeps_its_van_and_hour(changed):
    plan = changed.planned_again(changed.lame())
    assert changed.stop(plan, "firm") == (f"van-{changed.house.van.pk}-2026-03-03", at(3, 13))
    assert read_change(plan.change).asks == ()


def test_a_lame_cow_is_put_in_and_a_told_hour_stays(changed):
    plan = changed.planned_again(changed.lame())
    (lame,) = Visit.objects.within(changed.house.scope).filter(farm=changed.house.farm)
    assert f"visit-{lame.pk}" in {s["job"] for shift in plan.plan["shifts"] for s in shift["stops"]}
    shift, start = changed.stop(plan, "told")
    assert shift == f"van-{changed.house.van.pk}-2026-03-03"
    assert abs(start - at(3, 11)) <= timedelta(minutes=30)


def test_a_visit_called_off_is_gone_from_the_plan(changed):
    word = OffWord(changed.visits["told"], "No cows lame any more")
    plan = changed.planned_again(word)
    assert changed.stop(plan, "told") is None
    assert changed.stored("told").state == "called_off"
    compared = read_change(plan.change)
    assert f"visit-{changed.visits['told'].pk}" in {entry.job for entry in compared.in_force}


def test_the_van_goes_on_from_where_it_is_late(changed):
    started = start_visit(
        visit=changed.visits["first"], checked=True, at=at(3, 9, 5), by=changed.house.trimmer
    )
    word = LateWord(started, at(3, 12, 30))
    plan = changed.planned_again(word, now=at(3, 10, 2))
    first = changed.stop(plan, "first")
    assert first == (f"van-{changed.house.van.pk}-2026-03-03", at(3, 9, 5))
    assert jobs_of(plan)[f"visit-{started.pk}"]["minutes"] == 205
    assert changed.stop(plan, "told")[1] >= at(3, 12, 30)
    assert read_change(plan.change).facts == (f"visit-{started.pk}",)


def test_a_promise_that_the_late_van_cannot_reach_needs_a_yes(changed):
    started = start_visit(visit=changed.visits["first"], checked=True, at=at(3, 9), by=changed.house.trimmer)
    plan = changed.planned_again(LateWord(started, at(3, 13, 0)), now=at(3, 10))
    assert read_change(plan.change).asks == (f"visit-{changed.visits['firm'].pk}",)
    shift, start = changed.stop(plan, "firm")
    assert start != at(3, 13) or shift.startswith(f"van-{changed.second.pk}-")


def test_a_late_van_on_its_way_is_fixed_to_when_it_will_be_done(changed):
    plan = changed.planned_again(LateWord(changed.visits["first"], at(3, 12)), now=at(3, 8, 45))
    length = timedelta(minutes=changed.visits["first"].expected_minutes)
    assert changed.stop(plan, "first")[1] == at(3, 12) - length


def test_a_trimmer_who_is_ill_has_no_shift_in_the_next_plan_either(changed):
    changed.planned_again(changed.out())
    row = VanOut.objects.within(changed.house.scope).get()
    assert (row.van, row.noted_by) == (changed.house.van, changed.house.owner)
    shifts = week_under_way(changed.house.business, MONDAY, SEVEN).problem["shifts"]
    assert {shift["crew"] for shift in shifts} == {f"van-{changed.second.pk}"}


def test_where_nothing_is_left_what_happened_is_kept_all_the_same(house):
    visit = planned(house.farm, house.van)
    word = OffWord(visit, "Sold the herd")
    assert (
        replan_week(business=house.business, monday=MONDAY, happening=word, at=NOON, by=house.owner) is None
    )
    assert Visit.objects.within(house.scope).get().state == "called_off"
    assert not WeekPlan.objects.within(house.scope).exists()


def test_what_makes_no_sense_keeps_nothing(changed):
    with pytest.raises(HappeningMakesNoSense, match="over already"):
        changed.asked(LateWord(changed.visits["first"], SEVEN - timedelta(minutes=1)))
    assert not WeekPlan.objects.within(changed.house.scope).exists()


def test_the_job_starts_once_it_is_committed(changed, django_capture_on_commit_callbacks):
    with django_capture_on_commit_callbacks() as waiting:
        changed.asked(changed.lame())
    assert len(waiting) == 1


def test_a_farm_of_nowhere_in_the_week_can_have_a_lame_cow(changed):
    new = make_farm(changed.house.business, "Hill", by=changed.house.owner, latitude="54.02")
    word = changed.lame()
    plan = changed.planned_again(type(word)(new, word.wish))
    assert f"farm-{new.pk}" in {site["id"] for site in plan.problem["sites"]}


def test_instants_of_the_diary_come_back_in_the_zone_of_the_business(changed):
    plan = changed.planned_again(changed.lame())
    assert datetime.fromisoformat(plan.change["in_force"][0]["start"]) == at(3, 9)
