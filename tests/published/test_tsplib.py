"""TSPLIB's instances as week problems: lengths by TSPLIB's rules, tours through the audit, short ones solved.

Source: Reinelt 1991, see fixtures/routing/SOURCE.md.
"""

import pytest

from tests.published.plan_of_rounds import plan_of_rounds
from tests.published.solomon import published
from tests.published.solved import solved
from tests.published.tsplib import FILES, WITH_TOUR, Cities, read_cities, read_tour, tour_length, tour_week
from visits.domain.planning.audit import audit_week

LENGTHS = published("tsplib")


def optimal_tour(name: str) -> list[int]:
    if name in WITH_TOUR:
        return read_tour(name)
    return [city - 1 for city in published("tsplib_tours")[name]]


@pytest.mark.parametrize("name", FILES)
def test_the_optimal_tour_has_the_published_length(name):
    cities = read_cities(name)
    assert sorted(optimal_tour(name)) == list(range(len(cities.lengths)))
    assert tour_length(cities, optimal_tour(name)) == LENGTHS[name]


@pytest.mark.parametrize("name", FILES)
def test_the_optimal_tour_passes_the_audit_with_just_the_published_length(name):
    week = tour_week(read_cities(name))
    rounds = {"v1": [f"j{city}" for city in optimal_tour(name)[1:]]}
    assert audit_week(week, plan_of_rounds(week, rounds, LENGTHS[name])) == []
    assert audit_week(week, plan_of_rounds(week, rounds, LENGTHS[name] - 1)) != []


def test_distances_are_rounded_as_the_library_says():
    """berlin52, cities 1 (565, 575) and 2 (25, 185): the root of 443 700 is 666.1; gr24 gives 257 outright."""
    assert read_cities("berlin52").lengths[0][1] == 666
    assert read_cities("gr24").lengths[0][1] == read_cities("gr24").lengths[1][0] == 257
    assert read_cities("bays29").lengths[0][:3] == [0, 107, 241]


def shortest(cities: Cities) -> int:
    """Held and Karp (1962): least length over every set of cities and last city."""
    size, far = len(cities.lengths), 10**9
    held = {1 << at: {at: cities.lengths[0][at]} for at in range(1, size)}
    for _ in range(size - 2):
        grown: dict[int, dict[int, int]] = {}
        for mask, ends in held.items():
            for to in (at for at in range(1, size) if not mask >> at & 1):
                way = min(long + cities.lengths[last][to] for last, long in ends.items())
                into = grown.setdefault(mask | 1 << to, {})
                into[to] = min(into.get(to, far), way)
        held = grown
    (ends,) = held.values()
    return min(long + cities.lengths[last][0] for last, long in ends.items())


def test_the_length_of_burma14_is_the_least_by_every_set_of_cities():
    assert shortest(read_cities("burma14")) == LENGTHS["burma14"]


@pytest.mark.parametrize("name", ["burma14", "gr24", "bays29"])
def test_the_planner_finds_the_shortest_tour(name):
    plan = solved(tour_week(read_cities(name)), iterations=300)
    assert plan["cost"]["total"] == LENGTHS[name]
