"""Team orienteering with time windows as week problems: totals proven by labels, and found by the planner."""

import pytest

from tests.published.orienteering import orienteering_week, profit_of
from tests.published.rounds_by_labels import most_profit, proven_profit
from tests.published.solomon import Instance, published, read_solomon
from tests.published.solved import solved

FROM_MEMORY, TEAMS = published("orienteering"), published("orienteering_teams")


def named(name: str) -> tuple[Instance, int]:
    """ "R101.25/2": the first 25 customers of R101, two vehicles."""
    instance, vehicles = name.split("/")
    file, size = instance.split(".")
    return read_solomon(file, int(size)), int(vehicles)


@pytest.mark.parametrize("name", FROM_MEMORY)
def test_the_published_totals_kept_in_memory_are_proven(name):
    instance, vehicles = named(name)
    assert vehicles == 1
    assert most_profit(instance) == FROM_MEMORY[name]


@pytest.mark.parametrize("name", TEAMS)
def test_the_totals_of_teams_are_proven(name):
    assert proven_profit(*named(name)) == TEAMS[name]


@pytest.mark.parametrize("file", ["R101", "R105", "RC101"])
def test_two_exact_methods_agree(file):
    instance = read_solomon(file, 25)
    assert most_profit(instance) == proven_profit(instance, 1)


@pytest.mark.parametrize("name", TEAMS)
def test_the_planner_collects_all_that_can_be_collected(name):
    instance, vehicles = named(name)
    plan = solved(orienteering_week(instance, vehicles), iterations=300)
    assert profit_of(instance, plan["cost"]["total"]) == TEAMS[name]
