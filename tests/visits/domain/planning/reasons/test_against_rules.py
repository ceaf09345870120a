"""The sums of each way are those of its audited plan document."""

import json

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.audit import audit_week
from visits.domain.planning.board import Board
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.human_rules import bearings_of, nearest_by_due_date, same_area_same_day
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.reasons.against_rules import against_rules, week_sums


def test_the_sums_are_those_of_the_audited_documents():
    problem = made_up_week(20, 1, 3)
    made, bearings = Board(read_problem(json.dumps(problem))), bearings_of(problem)
    due, area = nearest_by_due_date(made), same_area_same_day(made, bearings)
    said = against_rules(made, due, bearings)
    assert [each.code for each in said] == ["this-plan", "nearest-by-due-date", "same-area-same-day"]
    assert said[0].figures == said[1].figures
    for orders, reason in zip((due, due, area), said, strict=True):
        plan = json.loads(
            json.dumps(plan_to_json(build_plan(made, orders, engine="r", seed=0, seconds=0, proven=False)))
        )
        assert audit_week(problem, plan) == []
        stops = [stop for each in plan["shifts"] for stop in each["stops"]]
        figures = reason.figures
        assert figures["done"] == len(stops)
        assert figures["left_out"] == len(plan["left_out"])
        assert figures["km"] == pytest.approx(sum(each["km"] for each in plan["shifts"]))
        assert figures["hours"] == pytest.approx(
            sum(each["work_minutes"] for each in plan["shifts"]) / 60, abs=0.001
        )
        assert figures["days_late"] == sum(stop["days_late"] for stop in stops)
        assert figures["money"] == pytest.approx(plan["cost"]["total"], abs=0.02)
        assert figures["road_money"] == pytest.approx(plan["cost"]["shifts"], abs=0.02)


def test_what_had_to_be_done_and_is_left_out_is_counted():
    made = board(week(job("a"), job("b", leave_out_cost=70), shifts=[shift()]))
    assert week_sums(made, ((),)) == {
        "done": 0,
        "left_out": 2,
        "must_left_out": 1,
        "km": 0,
        "hours": 0,
        "days_late": 0,
        "road_money": 0,
        "money": 70,
    }
