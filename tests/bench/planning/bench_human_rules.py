"""How much the planner saves against two rules of thumb, on made-up weeks of 30 to 60 farms and 1 to 3 vans.

`python -m tests.bench.planning.bench_human_rules [--seconds 10] [--seeds 1]`. Every plan passes the audit. The
cost is that of the contract, leave-out costs included. Kilometres and hours are set against the visits done, since
a rule that does fewer visits drives less. Raises where a rule is cheaper than the planner.
"""

import argparse
import json
import sys
from statistics import fmean

from tests.bench.planning.made_up_weeks import made_up_week
from tests.bench.planning.week_figures import Figures, figures
from visits.domain.planning.board import Board
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.human_rules import bearings_of, nearest_by_due_date, same_area_same_day
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits

SIZES = [(30, 1), (40, 1), (50, 2), (60, 3)]
RULES = ("nearest by due date", "same area same day")


def compared(problem: dict, seconds: float) -> list[Figures]:
    """Figures of the planner and of both rules."""
    board = Board(read_problem(json.dumps(problem)))
    weeks = [nearest_by_due_date(board), same_area_same_day(board, bearings_of(problem))]
    plans = [build_plan(board, week, engine="rule", seed=0, seconds=0, proven=False) for week in weeks]
    ours = solve(board.problem, limits=SolveLimits(seconds=seconds))
    return [figures(problem, plan_to_json(plan)) for plan in (ours, *plans)]


def line(size: tuple[int, int, int], name: str, here: Figures, ours: Figures) -> str:
    ratio = here.ratio(ours)
    cost = f"cost {ratio:.3f}x ours" if ratio else f"{here.missing - ours.missing} that must be done left out"
    each = f"{here.km / here.done:5.1f} km and {60 * here.hours / here.done:4.0f} min a visit"
    return (
        f"{size[0]:3} farms {size[1]} vans seed {size[2]}  {name:20} {here.done:3} done, {here.km:5.0f} km, "
        f"{here.hours:6.1f} h, {each}, {cost}"
    )


def main(words: list[str] | None = None) -> None:
    """A line for the planner and for each rule, then the mean saving against each."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--seeds", type=int, default=1)
    options = parser.parse_args(words or [])
    saved: dict[str, list[tuple[float, float, float]]] = {name: [] for name in RULES}
    for farms, vans in SIZES:
        for seed in range(options.seeds):
            ours, *theirs = compared(made_up_week(farms, vans, seed), options.seconds)
            for name, here in zip(("the planner", *RULES), (ours, *theirs), strict=True):
                print(line((farms, vans, seed), name, here, ours), flush=True)
            for name, here in zip(RULES, theirs, strict=True):
                saved[name].append(_saving(ours, here))
    for name, rows in saved.items():
        cost, km, hours = (fmean(row[part] for row in rows) for part in range(3))
        print(
            f"saving against {name}: {cost:.1%} of the cost, {km:.1%} of km and {hours:.1%} of hours a visit"
        )


def _saving(ours: Figures, here: Figures) -> tuple[float, float, float]:
    """Shares saved: cost, km a visit done, hours a visit done. Raises where the rule was the better."""
    if (here.missing, here.cost) < (ours.missing, ours.cost):
        raise SystemExit("a rule of thumb beats the planner")
    return (
        1 - ours.cost / here.cost,
        1 - ours.km / ours.done / (here.km / here.done),
        1 - ours.hours / ours.done / (here.hours / here.done),
    )


if __name__ == "__main__":
    main(sys.argv[1:])
