"""The engine's routes on a made week: it must start from a given plan, keep the rules and find no worse one."""

import json
import subprocess
import sys
from math import inf

from tests.bench.planning.made_up_weeks import made_up_week
from visits.domain.planning.board import Board
from visits.domain.planning.engine_model import engine_model
from visits.domain.planning.engine_pyvrp import EngineSearch
from visits.domain.planning.insertion import by_regret
from visits.domain.planning.read_problem import read_problem


def run(steps, seed=1):
    made = Board(read_problem(json.dumps(made_up_week(12, 1, 1))))
    start = tuple(by_regret(made, [() for _ in made.problem.shifts], set(range(12))))
    done = iter(range(steps))
    return made, start, EngineSearch(engine_model(made), start).run(seed, lambda _: next(done, None) is None)


def test_without_a_step_the_start_comes_back_so_the_model_holds_every_rule_of_it():
    _, start, found = run(0)
    assert found == start


def test_its_plan_keeps_the_rules_and_costs_less_than_the_start():
    made, start, found = run(400)
    assert all(made.cost(shift, order) < inf for shift, order in enumerate(found))
    assert made.total(found) < made.total(start)


def test_the_same_seed_and_steps_give_the_same_plan():
    assert run(60, seed=5)[2] == run(60, seed=5)[2]


def test_the_engine_is_not_loaded_before_a_search():
    code = (
        "import sys, visits.domain.planning.solve; sys.exit('pyvrp' in sys.modules or 'vroom' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
