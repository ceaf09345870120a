"""Weeks of five days derived from Solomon's files: a family of our own with proven totals."""

import pytest

from tests.published.rounds_by_labels import proven_total
from tests.published.several_days import open_days, several_days_week
from tests.published.solomon import published, read_solomon
from tests.published.solved import solved

PROVEN = published("several_days")
CASES = [(*name.split("/")[0].split("."), int(name.split("/")[1]), PROVEN[name]) for name in PROVEN]


def test_a_customer_is_shut_on_days_in_a_row_over_the_end_of_the_week_too():
    assert open_days(4, 2) == [1, 2, 3]
    assert open_days(7, 0) == [0, 1, 2, 3, 4]


@pytest.mark.parametrize(("file", "size", "shut", "total"), CASES)
def test_the_totals_are_proven(file, size, shut, total):
    assert proven_total(read_solomon(file, int(size)), shut) == total


@pytest.mark.parametrize(("file", "size", "shut", "total"), CASES)
def test_the_planner_finds_the_proven_total(file, size, shut, total):
    plan = solved(several_days_week(read_solomon(file, int(size)), shut), iterations=300)
    assert plan["cost"]["total"] == pytest.approx(total, abs=1e-6)


@pytest.mark.parametrize("file", ["C101", "R101", "RC108"])
def test_with_every_day_open_the_published_total_holds(file):
    plan = solved(several_days_week(read_solomon(file, 25), 0), iterations=300)
    assert plan["cost"]["total"] == pytest.approx(published("solomon")[f"{file}.25"], abs=1e-6)
