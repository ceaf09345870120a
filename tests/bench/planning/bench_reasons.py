"""How long the reasons of a plan take: `python -m tests.bench.planning.bench_reasons [--seconds 3]`.

Raises where those of a 60-job week take more than two seconds of one core.
"""

import argparse
import json
import sys
from time import process_time

from tests.bench.planning.made_up_weeks import made_up_week
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.reasons.week_reasons import week_reasons
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits

BAR = 2.0
SIZES = [(20, 1), (40, 1), (60, 2), (60, 3), (120, 6)]


def main(words: list[str] | None = None) -> None:
    """A line per week: seconds, and how many reasons of each kind."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--seconds", type=float, default=3.0, help="for the plan whose reasons are told")
    options = parser.parse_args(words or [])
    for farms, vans in SIZES:
        text = json.dumps(made_up_week(farms, vans, 1))
        plan = plan_to_json(solve(read_problem(text), limits=SolveLimits(seconds=options.seconds)))
        began = process_time()
        said = week_reasons(text, plan, seconds=120)
        took = process_time() - began
        counts = {part: len(said[part]) for part in ("stops", "left_out", "promises", "rules")}
        print(f"{farms:4} jobs {vans:2} vans  {took:5.2f} s  {counts}", flush=True)
        if farms <= 60 and took > BAR:
            raise SystemExit(f"the reasons of {farms} jobs took more than {BAR:g} s")


if __name__ == "__main__":
    main(sys.argv[1:])
