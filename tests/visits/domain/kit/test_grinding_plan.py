"""The plan against trying every choice of edges, the convolution against counting out every course of a day."""

from datetime import date, timedelta
from itertools import combinations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from visits.domain.kit.edge_life import EdgeLife
from visits.domain.kit.grinding_plan import (
    DayOfCows,
    EdgeNow,
    chance_short,
    grinding_plan,
    knives_needed,
    knives_to_carry,
)

MONDAY = date(2026, 3, 2)
LIFE = EdgeLife((1.0, 0.95, 0.9, 0.7, 0.4, 0.1), 12)
FIGURE = EdgeLife((1.0,) * 26, is_practice=True)


def edge(blade, cows, life=LIFE, *, is_dull=False):
    return EdgeNow(blade, cows, life, life, is_dull)


def plan(edges, *cows, limit=0.1):
    days = [DayOfCows(MONDAY + timedelta(days=n), each) for n, each in enumerate(cows)]
    return grinding_plan(edges, days, limit)


def counted_out(edges, cows):
    """Every course of the day, edge by edge, with its chance."""
    short = 0.0
    for course in product(*[list(enumerate(each.left(cows))) for each in edges]):
        chance = 1.0
        for _, part in course:
            chance *= part
        short += chance if sum(lasted for lasted, _ in course) < cows else 0
    return short


_SURVIVAL = st.lists(st.floats(0, 1), min_size=1, max_size=5).map(
    lambda falls: tuple(sorted([1.0, *falls], reverse=True))
)
_EDGES = st.lists(
    st.builds(
        lambda cows, life, fresh, is_dull: EdgeNow(0, cows, EdgeLife(life, 9), EdgeLife(fresh, 9), is_dull),
        st.integers(0, 5),
        _SURVIVAL,
        _SURVIVAL,
        st.booleans(),
    ),
    max_size=4,
)


@settings(max_examples=30)
@given(_EDGES, st.integers(0, 9))
def test_the_chance_is_that_of_counting_out_every_course_of_the_day(edges, cows):
    assert chance_short(edges, cows) == pytest.approx(counted_out(edges, cows), abs=1e-9)


def brute_force(edges, cows, limit):
    """The fewest edges that must be ground, by trying every choice; None where no choice holds the limit."""
    for number in range(len(edges) + 1):
        for chosen in combinations(range(len(edges)), number):
            after = [each.ground() if n in chosen else each for n, each in enumerate(edges)]
            if chance_short(after, cows) <= limit:
                return number
    return None


@settings(max_examples=30)
@given(
    st.lists(st.tuples(st.integers(0, 5), st.booleans()), min_size=1, max_size=4),
    st.integers(1, 14),
    st.sampled_from([0.05, 0.1, 0.3]),
)
def test_on_one_curve_that_only_wears_no_choice_grinds_fewer(worn, cows, limit):
    edges = [edge(n, done, is_dull=is_dull) for n, (done, is_dull) in enumerate(worn)]
    (found,) = plan(edges, cows, limit=limit)
    fewest = brute_force(edges, cows, limit)
    assert found.is_held == (fewest is not None)
    assert not found.is_held or len(found.grind) == fewest


@settings(max_examples=30)
@given(_EDGES, st.integers(1, 9), st.sampled_from([0.05, 0.2]))
def test_whatever_the_curves_a_plan_that_says_held_holds(edges, cows, limit):
    edges = [EdgeNow(n, each.cows, each.life, each.fresh, each.is_dull) for n, each in enumerate(edges)]
    (found,) = plan(edges, cows, limit=limit)
    after = [each.ground() if each.blade in found.grind else each for each in edges]
    assert found.chance == pytest.approx(chance_short(after, cows))
    assert found.is_held == (found.chance <= limit)
    if found.is_held:
        carried = [each for each in after if each.blade in found.carry]
        assert chance_short(carried, cows) <= limit


def test_a_sharp_set_needs_no_grinding_and_the_dull_one_goes_first():
    assert plan([edge(1, 0), edge(2, 0)], 3)[0].grind == ()
    (found,) = plan([edge(1, 2), edge(2, 4, is_dull=True), edge(3, 1)], 6)
    assert found.grind[0] == 2
    assert found.chance <= 0.1 < found.chance_unground


def test_a_day_that_no_edges_last_says_so():
    (found,) = plan([edge(1, 3)], 12)
    assert (found.is_held, found.grind, found.carry) == (False, (1,), (1,))
    assert found.chance == 1


def test_the_next_day_begins_with_the_wear_of_the_day_before():
    first, second = plan([edge(1, 0, FIGURE), edge(2, 0, FIGURE)], 40, 30)
    assert (first.grind, first.carry) == ((), (1, 2))
    # 25 cows on the one, which is dull, and 15 on the other: 10 are left, and 30 come.
    assert second.grind == (1,)
    assert second.is_held


def test_with_the_figure_alone_an_edge_is_counted_on_for_it_and_no_longer():
    assert knives_to_carry([edge(n, 0, FIGURE) for n in range(4)], 50, 0.1) == (0, 1)
    assert knives_to_carry([edge(n, 0, FIGURE) for n in range(4)], 51, 0.1) == (0, 1, 2)
    assert knives_to_carry([edge(1, 0, FIGURE)], 26, 0.1) is None


def test_to_carry_are_the_longest_lasting_and_no_more_than_needed():
    edges = [edge(1, 4), edge(2, 0), edge(3, 3)]
    assert knives_to_carry(edges, 2, 0.1) == (2,)
    assert knives_to_carry(edges, 0, 0.1) == ()


def test_how_many_fresh_knives_a_day_needs_is_the_first_number_that_holds():
    for cows in (1, 4, 9, 15):
        needed = knives_needed(LIFE, cows, 0.1)
        assert (
            chance_short([edge(0, 0)] * needed, cows) <= 0.1 < chance_short([edge(0, 0)] * (needed - 1), cows)
        )
    assert knives_needed(FIGURE, 1000, 0.1) is None
