"""How near the proven bound comes: `python -m tests.bench.planning.bench_bound [--seconds 60] [--farms 12 20 30 40]`.

For each made-up week: the planner's plan of 5 s, then the proof from there. Printed: the plan's cost, the best week
known after the proof, the bound, the gap between these two, whether it is closed, and seconds of wall clock and of
processor. Raises where a bound is above a plan's cost, or a week of 12 or 20 farms is not closed.
"""

import argparse
import json
import sys
from statistics import fmean
from time import perf_counter, process_time

from tests.bench.planning.made_up_weeks import made_up_week
from visits.domain.planning.board import Board
from visits.domain.planning.exact.pricing import make_ready
from visits.domain.planning.exact.prove_plan import good_days
from visits.domain.planning.exact.prove_week import prove_week
from visits.domain.planning.exact.time_left import TimeLeft
from visits.domain.planning.exact.week_rows import document_cost
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits
from visits.domain.planning.stored_week import week_of_document

FARMS = [12, 20, 30, 40]
SEEDS = (1, 2, 3)
PLAN_SECONDS, WARM_SECONDS = 5.0, 2.0
ALWAYS_CLOSED = 20


def proven(farms: int, seed: int, seconds: float, load: float) -> float:
    """One week, one line; the gap in per cent."""
    problem = read_problem(json.dumps(made_up_week(farms, 1 + (farms > 45), seed, load)))
    board = Board(problem)
    plan = plan_to_json(solve(problem, limits=SolveLimits(seconds=PLAN_SECONDS)))
    week = week_of_document(problem, plan)
    began, worked = perf_counter(), process_time()
    better, pool = good_days(board, week, TimeLeft(WARM_SECONDS))
    proof = prove_week(board, min(week, better, key=board.total), seconds, pool=pool)
    took, work = perf_counter() - began, process_time() - worked
    planned, best = document_cost(board, week), document_cost(board, proof.week)
    gap = 100 * (1 - proof.bound / best) if best else 0.0
    print(
        f"{farms:4} farms, seed {seed}: plan {planned:9.0f}  best {best:9.0f}  bound {proof.bound:9.0f}"
        f"  gap {gap:5.2f} %"
        f"  plan above bound {100 * (planned / proof.bound - 1) if proof.bound else 0:5.2f} %"
        f"  {'closed' if proof.closed else 'open  '}  {took:5.1f} s, processor {work:5.1f} s",
        flush=True,
    )
    assert proof.bound <= best + 1e-3, "a bound above a plan"
    assert proof.closed or farms > ALWAYS_CLOSED, "a small week is not closed"
    return gap


def main(words: list[str] | None = None) -> None:
    """All weeks, and the mean gap by size."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=60.0)
    parser.add_argument("--farms", type=int, nargs="*", default=FARMS)
    parser.add_argument("--seeds", type=int, nargs="*", default=list(SEEDS))
    parser.add_argument("--load", type=float, default=0.3)
    options = parser.parse_args(words or [])
    make_ready()
    for farms in options.farms:
        gaps = [proven(farms, seed, options.seconds, options.load) for seed in options.seeds]
        print(f"{farms:4} farms: mean gap {fmean(gaps):.2f} %", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
