"""What is stored comes back the same."""

import json
from datetime import datetime

import pytest

from tests.visits.domain.planning.hand_made import job, monday, planned, week
from visits.domain.planning.compare_plans import StoredPlan
from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.planning.replan.price_of_change import PriceOfChange
from visits.domain.planning.replan.stored_change import StoredChange, read_change


def change():
    problem = week(job("a"), job("b"))
    nine, ten = (datetime.fromisoformat(monday(clock)) for clock in ("09:00", "10:00"))
    return StoredChange(
        StoredPlan(problem, planned(problem)),
        (InForce("a", "mon", nine, Promise.CONFIRMED), InForce("b", "mon", ten, Promise.TOLD, nine)),
        PriceOfChange(5, 4, 3),
        ("a",),
        ("b",),
        "our kit has broken down",
    )


def test_all_but_the_bulk_of_the_old_problem_is_kept():
    made = change()
    read = read_change(json.loads(json.dumps(made.as_json())))
    assert (read.in_force, read.price, read.asks, read.facts) == (made.in_force, made.price, ("a",), ("b",))
    assert (read.before.plan, read.to_farms) == (made.before.plan, made.to_farms)
    assert set(read.before.problem) == {"timezone", "shifts", "jobs"}


def test_it_compares_as_the_whole_would():
    made, problem = change(), week(job("a"))
    after = StoredPlan(problem, planned(problem))
    assert read_change(made.as_json()).compared(after) == made.compared(after)


def test_a_spoilt_one_says_so():
    with pytest.raises(TypeError, match="spoilt"):
        read_change({**change().as_json(), "before": []})
