"""Leaving out by hand what would fit: the problem says so, and the audit agrees with the reason."""

import json

from tests.visits.domain.planning.hand_made import board, job, week
from visits.domain.planning.audit import audit_week
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.moves.leave_by_hand import cost_nothing_out, left_by_hand
from visits.domain.planning.plan_to_json import plan_to_json

EMPTY = ((),)


def document(problem, orders=EMPTY):
    plan = build_plan(board(problem), orders, engine="hand", seed=0, seconds=0, proven=False)
    return json.loads(json.dumps(plan_to_json(plan)))


def test_what_fits_and_is_worth_it_is_out_by_hand():
    problem = week(job("worth", leave_out_cost=90_000), job("dear", leave_out_cost=1), job("must"))
    assert [each.id for each in left_by_hand(board(problem), EMPTY)] == ["worth", "must"]


def test_what_does_not_fit_is_not_out_by_hand():
    problem = week(job("long", minutes=2000, leave_out_cost=90_000))
    assert left_by_hand(board(problem), EMPTY) == []


def test_what_is_planned_is_not_out_at_all():
    assert left_by_hand(board(week(job("must"))), ((0,),)) == []


def test_the_audit_doubts_the_reason_until_leaving_it_out_costs_nothing():
    problem = week(job("worth", leave_out_cost=90_000), job("other", leave_out_cost=90_000))
    assert any("not true" in line for line in audit_week(problem, document(problem)))
    cost_nothing_out(problem["jobs"], {"worth", "other"})
    assert audit_week(problem, document(problem)) == []


def test_only_the_named_jobs_change():
    problem = week(job("a", leave_out_cost=5), job("b", leave_out_cost=5))
    cost_nothing_out(problem["jobs"], {"a"})
    assert [each["leave_out_cost"] for each in problem["jobs"]] == [0, 5]
