"""The two rules of thumb: what they put where, that they keep every rule, and that they mean what they say."""

import json
from math import atan2

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.audit import audit_week
from visits.domain.planning.board import Board
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.human_rules import bearings_of, nearest_by_due_date, same_area_same_day
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem

DAYS = [
    shift(end=monday("12:00")),
    shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T12:00:00+00:00"),
]
ALL_WEEK = [window(), {"start": "2026-03-03T07:00:00+00:00", "end": "2026-03-03T17:30:00+00:00"}]


def test_what_is_due_first_takes_the_first_day_though_it_is_farther():
    far = job("a", "far", 120, due="2026-03-02", windows=ALL_WEEK, leave_out_cost=1)
    near = job("b", "near", 180, due="2026-03-05", windows=ALL_WEEK, leave_out_cost=1)
    assert nearest_by_due_date(board(week(near, far, shifts=DAYS))) == ((1,), (0,))


def test_of_two_due_together_the_nearer_goes_first():
    near, far = (job(name, name, 180, windows=ALL_WEEK, leave_out_cost=1) for name in ("near", "far"))
    assert nearest_by_due_date(board(week(far, near, shifts=DAYS))) == ((1,), (0,))


def test_what_must_be_done_goes_before_what_may_wait():
    may = job("a", "near", 180, due="2026-03-01", leave_out_cost=10**6)
    must = job("b", "far", 180, due="2026-03-09")
    made = board(week(may, must, shifts=DAYS[:1]))
    assert nearest_by_due_date(made) == same_area_same_day(made, [0.0, 1.0]) == ((1,),)


def test_each_slice_of_the_country_has_a_day_of_its_own():
    four = [job(f"j{at}", "near", 60, windows=ALL_WEEK) for at in range(4)]
    made = board(week(*four, shifts=DAYS))
    assert [set(order) for order in same_area_same_day(made, [0.3, -0.4, 0.1, -0.2])] == [{1, 3}, {0, 2}]


def test_what_its_own_day_cannot_hold_goes_into_the_next_and_the_last_is_left_out():
    three = [job(f"j{at}", "near", 200, windows=ALL_WEEK) for at in range(3)]
    made = board(week(*three, shifts=DAYS))
    assert same_area_same_day(made, [0.0, 0.1, 0.2]) == ((0,), (1,))


@pytest.mark.parametrize("odd", [week(), week(job("a")) | {"shifts": []}])
def test_a_week_without_jobs_or_without_shifts_stays_empty(odd):
    made = board(odd)
    assert not any(nearest_by_due_date(made))
    assert not any(same_area_same_day(made, bearings_of(odd)))


def test_bearings_are_seen_from_the_yard():
    problem = week(job("a"), job("b", "far"))
    problem["sites"][0] |= {"lat": 55.2, "lon": -2.3}
    problem["sites"][2] |= {"lat": 54.2, "lon": -1.3}
    assert bearings_of(problem) == pytest.approx([0.0, atan2(1.0, 0.0)])


@pytest.mark.parametrize(("farms", "vans"), [(12, 1), (30, 2)])
def test_both_rules_keep_promises_and_pass_the_audit(farms, vans):
    problem = made_up_week(farms, vans, 1)
    made = Board(read_problem(json.dumps(problem)))
    promised = {at for at, each in enumerate(made.problem.jobs) if each.fixed}
    assert promised
    for found in (nearest_by_due_date(made), same_area_same_day(made, bearings_of(problem))):
        plan = plan_to_json(build_plan(made, found, engine="rule", seed=0, seconds=0, proven=False))
        assert audit_week(problem, json.loads(json.dumps(plan))) == []
        assert promised <= {at for order in found for at in order}
        assert sum(map(len, found)) >= 0.7 * farms
