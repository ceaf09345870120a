"""A plain week by hand that each test changes where its rule lies: one van, Monday, three farms in a row.

yard - near - middle - far, 20 minutes and 15 km from each to the next, either way.
"""

import json

from visits.domain.planning.board import Board
from visits.domain.planning.plan_to_json import plan_to_json
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.solve import solve
from visits.domain.planning.solve_limits import SolveLimits

ROW = ["yard", "near", "middle", "far"]


def monday(clock):
    return f"2026-03-02T{clock}:00+00:00"


def window(start="07:00", end="17:30"):
    return {"start": monday(start), "end": monday(end)}


def shift(**changes):
    plain = {
        "id": "mon",
        "crew": "ann",
        "base": "yard",
        "start": monday("07:00"),
        "end": monday("17:30"),
        "cost_per_work_hour": 2400,
        "cost_per_km": 10,
    }
    return plain | changes


def job(name, site="near", minutes=60, **changes):
    return {"id": name, "site": site, "minutes": minutes, "windows": [window()]} | changes


def matrix(step=20, km=15):
    size = range(len(ROW))
    return {
        "kind": "matrix",
        "places": ROW,
        "minutes": [[step * abs(a - b) for b in size] for a in size],
        "km": [[km * abs(a - b) for b in size] for a in size],
    }


def week(*jobs, shifts=None, hygiene=None, **changes):
    levels = hygiene or {}
    plain = {
        "format": "trimops-week-problem/1",
        "timezone": "Europe/London",
        "bases": [{"id": "yard", "lat": 54.2, "lon": -2.3}],
        "sites": [{"id": name, "lat": 54.3, "lon": -2.4, "hygiene": levels.get(name, 0)} for name in ROW[1:]],
        "travel": matrix(),
        "shifts": shifts or [shift()],
        "jobs": list(jobs),
    }
    return plain | changes


def planned(problem, **limits):
    """The plan document of a problem document."""
    found = solve(read_problem(json.dumps(problem)), limits=SolveLimits(**({"iterations": 20} | limits)))
    return json.loads(json.dumps(plan_to_json(found)))


def board(problem):
    return Board(read_problem(json.dumps(problem)))


def starts(plan):
    """job -> (shift, HH:MM) of everything planned."""
    return {stop["job"]: (day["id"], stop["start"][11:16]) for day in plan["shifts"] for stop in day["stops"]}


def reasons(plan):
    return {out["job"]: out["reason"] for out in plan["left_out"]}
