"""Two plans beside each other."""

from datetime import datetime, timedelta

import pytest
from hypothesis import given, settings

from tests.random_examples import examples
from tests.visits.domain.planning.hand_made import job, monday, planned, shift, week
from tests.visits.domain.planning.replan.in_force import diary
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.compare_plans import Change, StoredPlan, compare_plans
from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.planning.replan.price_of_change import PriceOfChange

SHIFTS = [
    shift(),
    shift(id="mon-ben", crew="ben"),
    shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:30:00+00:00"),
]


def stored(jobs, **stops):
    """A plan by hand: job = "shift HH:MM"."""
    rows = {}
    for name, words in stops.items():
        at, clock = words.split()
        start = datetime.fromisoformat(f"2026-03-0{3 if at == 'tue' else 2}T{clock}:00+00:00")
        finish = start + timedelta(hours=1)
        rows.setdefault(at, []).append(
            {"job": name, "start": start.isoformat(), "finish": finish.isoformat()}
        )
    shifts = [{"id": at, "km": 10, "work_minutes": 90, "stops": list_} for at, list_ in rows.items()]
    return StoredPlan(week(*map(job, jobs), shifts=SHIFTS), {"shifts": shifts, "cost": {"total": 500}})


@pytest.mark.parametrize(
    ("before", "after", "change"),
    [
        ("mon 09:00", "mon 09:00", Change.STAYS),
        ("mon 09:00", "mon 09:01", Change.NEW_HOUR),
        ("mon 09:00", "mon-ben 09:00", Change.NEW_VAN),
        ("mon 09:00", "mon-ben 11:00", Change.NEW_VAN),
        ("mon 09:00", "tue 09:00", Change.NEW_DAY),
        ("mon-ben 09:00", "tue 09:00", Change.NEW_DAY),
    ],
)
def test_day_outranks_van_and_van_outranks_hour(before, after, change):
    (row,) = compare_plans(stored("a", a=before), stored("a", a=after)).visits
    assert row.change is change


def test_visits_that_only_one_plan_does():
    found = compare_plans(stored("abc", a="mon 09:00", b="mon 11:00"), stored("acd", c="mon 10:00"))
    assert {row.job: row.change for row in found.visits} == {
        "a": Change.LEFT_OUT,
        "b": Change.GONE,
        "c": Change.PUT_IN,
    }
    assert not found.same_list


def test_changed_visits_come_first_and_each_kind_in_order_of_time():
    before = stored("abcd", a="mon 09:00", b="mon 11:00", c="mon 13:00", d="mon 15:00")
    after = stored("abcd", a="mon 09:00", b="tue 12:00", c="tue 09:00", d="mon 14:00")
    found = compare_plans(before, after)
    assert [row.job for row in found.visits] == ["c", "b", "d", "a"]
    assert [row.job for row in found.changed] == ["c", "b", "d"]
    assert found.visits[2].later == timedelta(hours=-1)


def test_days_are_those_of_the_weeks_zone():
    problem = {**week(job("a"), shifts=SHIFTS), "timezone": "Pacific/Auckland"}
    # Half past ten and half past eleven in London are two days in Auckland, thirteen hours on.
    plans = [StoredPlan(problem, stored("a", a=f"mon {clock}").plan) for clock in ("10:30", "11:30")]
    assert compare_plans(*plans).visits[0].change is Change.NEW_DAY


def test_changes_are_counted_in_words():
    assert Change.NEW_DAY.counted(2) == "2 to another day"
    assert all(change.label and change.counted(1) for change in Change)


def test_sums_and_the_price_paid():
    in_force = [
        InForce("a", "mon", datetime.fromisoformat(monday("09:00")), Promise.TOLD),
        InForce("off", "mon", datetime.fromisoformat(monday("12:00")), Promise.TOLD),
    ]
    found = compare_plans(
        stored("ab", a="mon 09:00", b="tue 09:00"),
        stored("ab", a="tue 09:00"),
        in_force,
        PriceOfChange(100, 20, 30),
    )
    assert (found.before.km, found.before.hours, found.before.visits) == (20, 3, 2)
    assert (found.after.km, found.after.money, found.after.visits) == (10, 500, 1)
    # What has been called off is nobody's broken promise.
    assert found.paid == 120


@settings(max_examples=examples(60), deadline=None)
@given(small_weeks())
def test_a_plan_against_itself_changes_nothing(problem):
    plan = StoredPlan(problem, planned(problem))
    found = compare_plans(plan, plan, diary(plan.plan, [Promise.TOLD] * 9), PriceOfChange())
    assert (found.changed, found.before, found.same_list) == ([], found.after, True)
    assert found.paid == 0
