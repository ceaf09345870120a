"""The hand-made weeks of fixtures/week_problems, and ways to spoil one figure in a copy."""

import copy
import json
from pathlib import Path

WEEKS = Path(__file__).resolve().parents[5] / "fixtures" / "week_problems"
GONE = object()


def week(name: str) -> tuple[dict, dict]:
    """The problem and the plan drawn up by hand (figures by hand arithmetic, no program)."""
    problem, plan = (WEEKS / f"audit_{name}_{part}.json" for part in ("problem", "plan"))
    return json.loads(problem.read_text()), json.loads(plan.read_text())


def spoilt(document: dict, *changes: tuple[str, object]) -> dict:
    """A copy with each place ("shifts.0.km") set to a value, or taken away (GONE)."""
    copied = copy.deepcopy(document)
    for place, value in changes:
        *way, last = (int(step) if step.isdecimal() else step for step in place.split("."))
        spot = copied
        for step in way:
            spot = spot[step]
        if value is GONE:
            del spot[last]
        else:
            spot[last] = value
    return copied
