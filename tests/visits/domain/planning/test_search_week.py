"""The search for larger weeks, held against the proven best of small ones and against the audit."""

import json

from hypothesis import HealthCheck, given, settings

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.audit import audit_week
from visits.domain.planning.board import Board
from visits.domain.planning.exact_small import best_week
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.search_week import search_week
from visits.domain.planning.solve import SEARCH, solve
from visits.domain.planning.solve_limits import SolveLimits

SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]


@settings(max_examples=40, deadline=None, derandomize=True, suppress_health_check=SLOW)
@given(small_weeks(most_jobs=6))
def test_the_search_finds_the_proven_best_of_small_weeks(problem):
    made = Board(read_problem(json.dumps(problem)))
    found = search_week(made, SearchClock(SolveLimits(iterations=300))).week
    assert abs(made.total(found) - made.total(best_week(made))) < 0.01


def plan_of(problem, **limits):
    return json.loads(
        json.dumps(plan_to_json(solve(read_problem(json.dumps(problem)), limits=SolveLimits(**limits))))
    )


def test_a_full_week_passes_the_audit_and_repeats_by_seed_and_iterations():
    problem = made_up_week(24, 2, 4)
    first, second = (plan_of(problem, iterations=60, seed=3) for _ in range(2))
    assert first["engine"] == SEARCH
    assert audit_week(problem, first) == []
    assert first | {"seconds": 0} == second | {"seconds": 0}


def test_a_stop_ends_a_long_search_with_a_plan():
    problem = made_up_week(24, 2, 4)
    stopped = solve(
        read_problem(json.dumps(problem)), limits=SolveLimits(seconds=3600), should_stop=lambda: True
    )
    assert stopped.seconds < 600
    assert audit_week(problem, json.loads(json.dumps(plan_to_json(stopped)))) == []


def test_a_start_is_never_made_worse_and_a_surcharge_keeps_jobs_where_they_are():
    problem = made_up_week(24, 2, 4)
    read = read_problem(json.dumps(problem))
    board = Board(read)
    start = search_week(board, SearchClock(SolveLimits(iterations=40))).week
    assert board.total(search_week(board, SearchClock(SolveLimits(iterations=1, seed=9)), start).week) <= (
        board.total(start) + 0.01
    )
    home = {job: shift for shift, order in enumerate(start) for job in order}
    moved = {
        (job, shift): 10.0**7 for job, own in home.items() for shift in range(len(start)) if shift != own
    }
    plan = solve(read, limits=SolveLimits(iterations=40, seed=9), start=start, surcharge=moved)
    ids = {shift.id: at for at, shift in enumerate(read.shifts)}
    jobs = {job.id: at for at, job in enumerate(read.jobs)}
    placed = {jobs[stop.job]: ids[shift.id] for shift in plan.shifts for stop in shift.stops}
    assert all(placed[job] == shift for job, shift in home.items() if job in placed)
    assert plan.bound is None


def test_a_search_by_the_clock_ends_early_with_a_proof():
    problem = made_up_week(12, 1, 1, 0.3)
    plan = plan_of(problem, seconds=600.0)
    assert plan["bound"] == plan["cost"]["total"]
    assert plan["seconds"] < 600
    assert audit_week(problem, plan) == []


def test_a_bound_is_never_above_the_cost_and_the_audit_takes_it():
    problem = made_up_week(30, 2, 3)
    plan = plan_of(problem, seconds=1.0)
    assert plan["bound"] is None or plan["bound"] <= plan["cost"]["total"]
    assert audit_week(problem, plan) == []
