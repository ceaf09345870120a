"""How much cheaper than the head the planner is, on made weeks: `python -m tests.bench.planning.bench_weeks`.

Every plan passes the audit. A visit that must be done but is left out is counted, and in the cost compared it
weighs as much as the dearest leave-out cost of the generator (20 000), so that no rule looks cheap by doing less.
"""

import argparse
import json
from statistics import fmean

from tests.bench.planning.human_rules import nearest_by_due_day, same_area_same_day
from tests.bench.planning.made_weeks import made_week
from visits.domain.planning.audit import audit_week
from visits.domain.planning.board import Board
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits

SMALL = [(12, 1, 101), (20, 1, 102), (40, 1, 103), (60, 2, 104)]
LARGE = [
    (farms, vans, 200 + seed) for farms, vans in ((12, 1), (20, 1), (40, 1), (60, 2)) for seed in range(4)
]
MUST = 20_000


def weighed(problem, plan):
    """(cost compared, visits that must be done but are not); refuses a plan with a breach."""
    document = json.loads(json.dumps(plan_to_json(plan)))
    breaches = audit_week(problem, document)
    if breaches:
        raise SystemExit("\n".join(breaches))
    musts = {job["id"] for job in problem["jobs"] if "leave_out_cost" not in job}
    missing = sum(out["job"] in musts for out in document["left_out"])
    return document["cost"]["total"] + MUST * missing, missing


def compared(farms, vans, seed, seconds):
    """Weighed cost and missing visits of the planner and of both rules."""
    problem = made_week(farms, vans, seed)
    read = read_problem(json.dumps(problem))
    board = Board(read)
    points = {site["id"]: (site["lat"] - 54.25, site["lon"] + 2.35) for site in problem["sites"]}
    where = [points[job["site"]] for job in problem["jobs"]]
    weeks = [nearest_by_due_day(board), same_area_same_day(board, where)]
    heads = [build_plan(board, week, engine="head", seed=0, seconds=0, proven=False) for week in weeks]
    ours = solve(read, limits=SolveLimits(seconds=seconds))
    return [weighed(problem, plan) for plan in (ours, *heads)]


def main(words=None):
    """Prints one line per week and the mean ratios; returns them."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=10.0)
    parser.add_argument("--large", action="store_true", help="16 weeks instead of 4")
    options = parser.parse_args(words)
    print(
        "farms vans seed      planner   by due day   same area   (must-do visits missing: planner, due, area)"
    )
    ratios = []
    for farms, vans, seed in LARGE if options.large else SMALL:
        (ours, missing), (due, due_missing), (area, area_missing) = compared(
            farms, vans, seed, options.seconds
        )
        ratios.append((due / ours, area / ours))
        line = f"{farms:5} {vans:4} {seed:4} {ours:12.0f} {due / ours:11.3f}x {area / ours:10.3f}x"
        print(f"{line}   ({missing}, {due_missing}, {area_missing})", flush=True)
    means = fmean(due for due, _ in ratios), fmean(area for _, area in ratios)
    print(f"mean {means[0]:31.3f}x {means[1]:10.3f}x   at {options.seconds:g} s a week")
    return means


if __name__ == "__main__":
    main()
