import json
import subprocess
import sys

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.board import Board
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.swift.machine import SwiftSearch, make_ready


def steps(most):
    return lambda done: done / most


def test_a_search_goes_on_from_the_week_it_is_given_and_never_loses_it():
    made = Board(read_problem(json.dumps(made_up_week(24, 1, 3))))
    first = SwiftSearch(made, 1)
    first.begin_with(tuple(() for _ in made.problem.shifts))
    first.run(steps(400), 3000.0, 30.0)
    assert first.cost == pytest.approx(made.total(first.best()), abs=1e-3)
    second = SwiftSearch(made, 2)
    second.begin_with(first.best())
    assert second.best() == first.best()
    second.run(steps(100), 1e6, 1e6)
    assert second.cost <= first.cost


def test_days_seen_carry_their_exact_cost():
    made = Board(read_problem(json.dumps(made_up_week(24, 2, 3))))
    search = SwiftSearch(made, 1)
    search.begin_with(tuple(() for _ in made.problem.shifts))
    search.run(steps(400), 3000.0, 30.0)
    days = list(search.days_seen())
    assert len(days) > 20
    for (at, jobs), (cost, order) in days:
        assert jobs == frozenset(order)
        assert cost == pytest.approx(made.cost(at, order), abs=1e-3)


@pytest.mark.parametrize("problem", [week(), week(job("a")) | {"shifts": []}, week(shifts=[shift()])])
def test_a_week_without_jobs_or_shifts_has_nothing_to_search(problem):
    made = board(problem)
    search = SwiftSearch(made, 1)
    search.begin_with(tuple(() for _ in made.problem.shifts))
    search.run(steps(5), 1.0, 1.0)
    assert search.best() == tuple(() for _ in made.problem.shifts)


def test_the_compiler_is_not_loaded_with_the_planner():
    code = "import sys, visits.domain.planning.solve; sys.exit(any(m in sys.modules for m in ('numba', 'pyvrp')))"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
    make_ready()
