"""A plan of the wrong form gives breaches with their paths, never an error."""

import pytest

from tests.visits.domain.planning.audit.spoil import GONE, spoilt, week
from visits.domain.planning.audit import audit_week

STOP = "shifts.0.stops.0"
ROWS = [
    ("format", "trimops-week-plan/2", "format: is not trimops-week-plan/1"),
    ("format", GONE, "format: is missing"),
    ("engine", "", "engine: is not a text"),
    ("seed", True, "seed: is not a number"),
    ("seed", 1.5, "seed: is not a whole number"),
    ("seconds", -1, "seconds: is below 0"),
    ("seconds", float("nan"), "seconds: is not a finite number"),
    ("cost", [], "cost: is not an object"),
    ("cost.total", "0", "cost.total: is not a number"),
    ("cost.extra", 1, "cost.extra: is not a key of this document"),
    ("bound", GONE, "bound: is missing"),
    ("shifts", None, "shifts: is not a list"),
    ("shifts.0", 7, "shifts[0]: is not an object"),
    ("shifts.0.leave", "2026-03-02T07:40:00", "shifts[0].leave: has no offset"),
    ("shifts.0.leave", 5, "shifts[0].leave: is not an instant"),
    ("shifts.0.return", "soon", "shifts[0].return: is not an ISO 8601 instant"),
    ("shifts.0.return", "9999-12-31T23:59:59-23:00", "shifts[0].return: is not between the years"),
    ("shifts.0.cows", 50.5, "shifts[0].cows: is not a whole number"),
    ("shifts.0.meal", GONE, "shifts[0].meal: is missing"),
    ("shifts.0.meal", [], "shifts[0].meal: is not an object"),
    ("shifts.0.stops", {}, "shifts[0].stops: is not a list"),
    (STOP, None, "shifts[0].stops[0]: is not an object"),
    (f"{STOP}.km", None, "shifts[0].stops[0].km: is not a number"),
    (f"{STOP}.days_late", GONE, "shifts[0].stops[0].days_late: is missing"),
    (f"{STOP}.job", ["j1"], "shifts[0].stops[0].job: is not a text"),
    (f"{STOP}.note", "x", "shifts[0].stops[0].note: is not a key"),
    ("left_out", "none", "left_out: is not a list"),
    ("left_out.0.detail", " ", "left_out[0].detail: is not a text"),
    ("colour", 1, "colour: is not a key of this document"),
]


@pytest.mark.parametrize(("place", "value", "breach"), ROWS)
def test_a_wrong_form_is_a_breach(place, value, breach):
    problem, plan = week("plain")
    assert any(line.startswith(breach) for line in audit_week(problem, spoilt(plan, (place, value))))


@pytest.mark.parametrize("plan", [{}, [], None, "plan", 3, {"shifts": [[]], "left_out": [None]}])
def test_anything_at_all_in_place_of_a_plan_gives_breaches(plan):
    problem, _ = week("plain")
    assert audit_week(problem, plan)
