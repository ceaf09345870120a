"""2,000 random weeks of one to seven jobs against trying everything.

Two ways are held against brute force (which shares no code with the solver): `solve`, which proves such small
weeks, and the search for larger weeks, called directly. Raises on any breach the audit finds, on any job or promise
left out that brute force can place, on any cost below brute force, and where fewer than 99 % of costs are equal.
"""

import argparse
import json
import sys
from collections import Counter

from hypothesis import HealthCheck, given, settings

from tests.visits.domain.planning.brute_force import best_cost
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.audit import audit_week
from visits.domain.planning.board import Board
from visits.domain.planning.build_plan import build_plan
from visits.domain.planning.plan import WeekPlan
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.search_week import search_week
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits

BAR = 0.99
PENNY_PART = 0.01


def proven(problem: dict) -> WeekPlan:
    """By `solve`, as the site does."""
    return solve(read_problem(json.dumps(problem)), limits=SolveLimits(iterations=5))


def searched(problem: dict, iterations: int) -> WeekPlan:
    """By the search that larger weeks get."""
    board = Board(read_problem(json.dumps(problem)))
    week = search_week(board, SearchClock(SolveLimits(iterations=iterations))).week
    return build_plan(board, week, engine="search", seed=1, seconds=0, proven=False)


def gap(problem: dict, plan: WeekPlan, best: tuple[int, int, float]) -> float:
    """Cost above brute force; AssertionError on a breach, a job missed, or a cost below."""
    document = json.loads(json.dumps(plan_to_json(plan)))
    breaches = audit_week(problem, document)
    assert not breaches, breaches
    assert missing(problem, document) == best[:2], "a job is left out that trying everything can place"
    above = document["cost"]["total"] - best[2]
    assert above > -PENNY_PART, "cheaper than trying everything: one of the two is wrong"
    return above


def missing(problem: dict, document: dict) -> tuple[int, int]:
    """How many jobs that must be planned, and how many promises, the plan leaves out."""
    out = {each["job"] for each in document["left_out"]}
    musts = {job["id"] for job in problem["jobs"] if "leave_out_cost" not in job or "fixed" in job}
    return len(musts & out), len({job["id"] for job in problem["jobs"] if "fixed" in job} & out)


def measured(weeks: int, iterations: int) -> Counter[str]:
    """Counts over `weeks` random weeks, always the same ones."""
    counts: Counter[str] = Counter()

    @settings(
        max_examples=weeks,
        deadline=None,
        derandomize=True,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(small_weeks(most_jobs=7, least_jobs=1))
    def one(problem: dict) -> None:
        best = best_cost(problem)
        counts["weeks"] += 1
        counts[f"of {len(problem['jobs'])} jobs"] += 1
        counts["with a job that no plan holds"] += best[0] > 0
        counts["proven, equal"] += gap(problem, proven(problem), best) < PENNY_PART
        counts["searched, equal"] += gap(problem, searched(problem, iterations), best) < PENNY_PART

    one()
    return counts


def main(words: list[str] | None = None) -> None:
    """Prints the counts and raises where the bar is missed."""
    parser = argparse.ArgumentParser()
    parser.add_argument("--weeks", type=int, default=2000)
    parser.add_argument("--iterations", type=int, default=300, help="steps of the search for each week")
    options = parser.parse_args(words or [])
    counts = measured(options.weeks, options.iterations)
    for name in sorted(counts):
        print(f"{name:32} {counts[name]:5}")
    for way in ("proven", "searched"):
        share = counts[f"{way}, equal"] / counts["weeks"]
        print(f"{way}: {share:.2%} cost what trying everything finds; none less, no breach, no job missed")
        if share < (1 if way == "proven" else BAR):
            raise SystemExit(f"{way}: below the bar")


if __name__ == "__main__":
    main(sys.argv[1:])
