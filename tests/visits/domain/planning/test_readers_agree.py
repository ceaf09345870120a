"""Problem documents spoilt at random: planner and audit read them alike, and every refusal has a path.

The two readers share no code. The planner alone has upper bounds (each named below); nothing else may differ.
"""

import copy
import json
import os
from random import Random

import pytest

from tests.visits.domain.planning.hand_made import job, monday, shift, week, window
from visits.domain.planning.audit import Unreadable, audit_week, read_document
from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.solve_limits import SolveLimits

SEEDS = 20_000 if os.environ.get("TRIMOPS_LONG") == "1" else 400
MEAL = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}
BY_TABLE = week(
    job("a", cows=3, due="2026-03-02", late_cost_per_day=5, fixed={"shift": "mon", "start": monday("10:00")}),
    job(
        "b", "far", leave_out_cost=10_000, crews=["ann"], windows=[window("07:30", "11:00"), window("12:00")]
    ),
    job("c", "middle", cows=4),
    shifts=[shift(meal=MEAL, max_cows=50, max_work_minutes=600), shift(id="two", start=monday("13:00"))],
    hygiene={"far": 1},
)
BY_MAP = BY_TABLE | {"travel": {"kind": "estimate", "circuity": 1.35, "kmh": 48, "minutes_per_leg": 2}}
PLANNER_ALONE = (" or less", "must lie in the years", "is not a day written as")
ODD = [-0.0, 1e-9, 1e9, 1e13, 1e300, 10**30, float("nan"), float("inf")]
NUMBERS = [0, 1, -1, 0.5, 28.0, 60, 90, 91, -91, 181, *ODD]
TEXTS = [
    "",
    " ",
    "\0",
    "x",
    "mon",
    "near",
    "ann",
    "yard",
    "a",
    "UTC",
    "utc",
    "Pacific/Apia",
    "matrix",
    "estimate",
]
TIMES = [
    *("2026-03-02", "2026-W10", "0001-01-01", "2026-03-02T12", "2026-03-02T12Z", "20260302T120000Z"),
    *("2026-03-02T24:00Z", "2026-03-02T24:01Z", "2026-03-02T12:00:00.05Z", "2026-03-02T12:00:60Z"),
    *("2026-03-02 12:00Z", "2026-03-02T12:00+00:00:01", "1970-06-01T00:00Z", "2200-01-01T00:00Z"),
]
VALUES = [None, True, False, [], {}, [0], ["x"], {"x": 1}, *NUMBERS, *TEXTS, *TIMES]


def places(document, way=()):
    if way:
        yield way
    inner = document.items() if isinstance(document, dict) else enumerate(document)
    for key, value in inner:
        if isinstance(value, dict | list):
            yield from places(value, (*way, key))
        else:
            yield (*way, key)


def spoilt(chance):
    """A good problem with one to three places changed, taken away, doubled or given a key of nobody's."""
    problem = copy.deepcopy(chance.choice([BY_TABLE, BY_MAP]))
    for _ in range(chance.choice([1, 1, 1, 2, 3])):
        *way, last = chance.choice(list(places(problem)))
        spot = problem
        for step in way:
            spot = spot[step]
        deed = chance.random()
        if deed < 0.1:
            del spot[last]
        elif deed < 0.2 and isinstance(spot, list):
            spot.append(copy.deepcopy(spot[last]))
        elif deed < 0.25 and isinstance(spot, dict):
            spot["note"] = 1
        else:
            spot[last] = copy.deepcopy(chance.choice(VALUES))
    return json.dumps(problem)


def planners_faults(text):
    try:
        plan_week_problem(text, limits=SolveLimits(iterations=5))
    except ProblemFaults as refusal:
        return refusal.faults
    return []


def audits_faults(text):
    try:
        audit_week(read_document(text), {})
    except Unreadable as refusal:
        return refusal.faults
    return []


@pytest.mark.parametrize("share", range(4))
def test_a_problem_spoilt_at_random_is_planned_and_audited_or_refused_by_both(share):
    refused = 0
    for seed in range(share, SEEDS, 4):
        text = spoilt(Random(seed))
        ours, theirs = planners_faults(text), audits_faults(text)
        assert all(": " in fault for fault in ours), (seed, ours)
        if not any(words in fault for fault in ours for words in PLANNER_ALONE):
            assert bool(ours) == bool(theirs), (seed, ours, theirs)
        refused += bool(ours)
    assert SEEDS / 8 < refused < SEEDS / 4, "of each share some must be refused, and some planned"
