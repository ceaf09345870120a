"""The diary in the shape of a plan."""

import json
from datetime import datetime

from tests.visits.domain.planning.hand_made import board, job, monday, planned, week
from tests.visits.domain.planning.replan.in_force import diary
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.plan_in_force import (
    InForce,
    Promise,
    document_in_force,
    lost_shifts,
    week_in_force,
)


def at(clock):
    return datetime.fromisoformat(monday(clock))


def test_orders_follow_the_hours_and_what_is_gone_is_passed_over():
    problem = board(week(job("a"), job("b"))).problem
    entries = [InForce("b", "mon", at("09:00")), InForce("a", "mon", at("11:00"))]
    entries += [InForce("gone", "mon", at("10:00")), InForce("a", "tue", at("12:00"))]
    assert week_in_force(problem, entries[:3]) == ((1, 0),)


def test_the_diarys_hours_and_its_cost_are_told_as_they_are():
    problem = week(job("a", minutes=60), job("b", "far", leave_out_cost=700), job("c", due="2026-02-28"))
    entries = [InForce("a", "mon", at("09:00")), InForce("c", "mon", at("12:00"))]
    problem["jobs"][2]["late_cost_per_day"] = 100
    document = document_in_force(read_problem(json.dumps(problem)), entries)
    (shift,) = document["shifts"]
    # Twenty minutes out and home, from 08:40 to 13:20, thirty kilometres at 10, 4 h 40 at 2400, two days late.
    assert (shift["leave"][11:16], shift["return"][11:16]) == ("08:40", "13:20")
    assert (shift["km"], shift["work_minutes"]) == (30, 280)
    assert document["cost"] == {"shifts": 300 + 11200, "lateness": 200, "left_out": 700, "total": 12400}
    assert [stop["start"][11:16] for stop in shift["stops"]] == ["09:00", "12:00"]
    assert [out["job"] for out in document["left_out"]] == ["b"]


def test_a_plan_put_into_the_diary_costs_there_what_it_said():
    problem = week(
        job("a"),
        job("b", "far", 90),
        job("c", "middle", windows=[{"start": monday("12:00"), "end": monday("16:00")}]),
    )
    plan = planned(problem)
    document = document_in_force(read_problem(json.dumps(problem)), diary(plan))
    assert document["cost"]["total"] == plan["cost"]["total"]


def test_a_farm_counts_on_what_it_was_told_or_what_it_confirmed():
    assert InForce("a", "mon", at("09:00")).known_hour is None
    assert InForce("a", "mon", at("09:00"), Promise.CONFIRMED).known_hour == at("09:00")
    assert InForce("a", "mon", at("09:00"), Promise.TOLD, at("10:00")).known_hour == at("10:00")


def test_a_visit_whose_van_no_longer_goes_out_is_told_with_its_hour():
    problem = read_problem(json.dumps(week(job("a"), job("b", leave_out_cost=700))))
    entries = [InForce("a", "mon", at("09:00")), InForce("b", "tue", at("10:00"), crew="ben")]
    document = document_in_force(problem, entries)
    assert lost_shifts(problem, entries) == [{"id": "tue", "crew": "ben"}]
    assert [(s["id"], s["km"], [stop["job"] for stop in s["stops"]]) for s in document["shifts"]] == [
        ("mon", 30, ["a"]),
        ("tue", 0, ["b"]),
    ]
    assert document["left_out"] == []
    assert document["shifts"][1]["stops"][0]["finish"] == monday("11:00")
