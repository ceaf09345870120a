"""Solomon's instances as week problems: the converter and the audit agree with the published totals, and so do we.

Sources: fixtures/routing/SOURCE.md and totals.json.
"""

import pytest

from tests.published.plan_of_rounds import plan_of_rounds
from tests.published.rounds_by_labels import proven_total
from tests.published.solomon import FILES, published, read_solomon, solomon_week
from tests.published.solved import solved
from visits.domain.planning.audit import audit_week

TOTALS = published("solomon")


def published_plan(name: str, claimed: float) -> tuple[dict, dict]:
    file, size = name.split(".")
    week = solomon_week(read_solomon(file, int(size)))
    rounds = {
        f"v{at}": [f"j{number}" for number in line.split()]
        for at, line in enumerate(published("solomon_rounds")[name], start=1)
    }
    return week, plan_of_rounds(week, rounds, claimed)


def test_a_file_is_read_as_it_is_printed():
    read = read_solomon("R101", 25)
    assert (read.vehicles, read.capacity, len(read.customers)) == (25, 200, 26)
    assert (read.customers[1].x, read.customers[1].y, read.customers[1].demand) == (41, 49, 10)
    # Depot (35, 35) to customer 1 (41, 49): the root of 232 is 15.2315...
    assert read.tenths(0, 1) == read.tenths(1, 0) == 152


@pytest.mark.parametrize("name", published("solomon_rounds"))
def test_the_published_rounds_pass_the_audit_with_just_the_published_total(name):
    assert audit_week(*published_plan(name, TOTALS[name])) == []


def test_a_claim_a_tenth_below_the_published_total_is_found():
    lines = audit_week(*published_plan("C101.25", 191.2))
    assert "cost.total: says 191.2, it comes to 191.3" in lines


def test_rounds_turned_about_miss_their_windows():
    week, plan = published_plan("C101.25", 191.3)
    rounds = {shift["id"]: [stop["job"] for stop in reversed(shift["stops"])] for shift in plan["shifts"]}
    lines = audit_week(week, plan_of_rounds(week, rounds, 191.3))
    assert any("the work is not whole inside one window" in line for line in lines)


@pytest.mark.parametrize("file", ["R101", "R105", "RC101"])
def test_the_published_total_is_the_least_by_a_method_of_its_own(file):
    assert proven_total(read_solomon(file, 25)) == TOTALS[f"{file}.25"]


@pytest.mark.parametrize("file", FILES)
def test_the_planner_finds_the_proven_total_of_25_customers(file):
    plan = solved(solomon_week(read_solomon(file, 25)), iterations=300)
    assert plan["left_out"] == []
    assert plan["cost"]["total"] == pytest.approx(TOTALS[f"{file}.25"], abs=1e-6)


def test_totals_are_named_for_every_file_and_size():
    assert set(TOTALS) == {f"{file}.{size}" for file in FILES for size in (25, 50, 100)}
