"""What leaves first was bought first; parts add up to the penny."""

from fractions import Fraction
from itertools import accumulate, pairwise
from math import floor

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from visits.domain.kit.pack_costs import Pack, PackCosts

PACKS = st.lists(st.builds(Pack, st.integers(1, 60), st.one_of(st.none(), st.integers(0, 5000))), max_size=6)


def pounds(*packs):
    """Whole units and pounds, as the examples have them."""
    return PackCosts(Pack(units * 100, cost * 100) for units, cost in packs)


def test_a_textbooks_year_comes_out_as_in_the_textbook():
    """Weygandt, Kimmel, Kieso, "Accounting Principles", chapter Inventories, the example of the electronics shop
    (figures from memory): 100 units at 10, 200 at 11, 300 at 12, 400 at 13; 550 are sold. First in, first out the
    goods sold cost 6,200 and those left 5,800. (Last in, first out it would be 7,000 and 5,000, by averages 6,600 and
    5,400, so the figures tell the methods apart.)
    """
    year = pounds((100, 1000), (200, 2200), (300, 3600), (400, 5200))
    assert year.paid == 12_000 * 100
    assert year.between(0, 550 * 100) == 6200 * 100
    assert year.left(550 * 100) == 5800 * 100


def test_thirds_of_a_pound_add_up_to_the_pound():
    packs = PackCosts([Pack(300, 100)])
    thirds = [packs.between(100 * n, 100 * n + 100) for n in range(3)]
    assert thirds == [33, 34, 33]


def test_what_was_used_before_it_was_bought_costs_what_is_bought_next():
    packs = pounds((10, 50), (10, 70))
    assert packs.between(1500, 2500) == 3500
    assert not packs.are_known(1500, 2500)
    assert packs.are_known(1500, 2000)


def test_what_was_there_before_all_packs_costs_nothing_that_is_known():
    packs = pounds((10, 50))
    assert packs.between(-500, 200) == 1000
    assert not packs.are_known(-500, 200)
    assert packs.left(-500) == 5000


def test_a_pack_without_a_price_is_said_to_have_none():
    packs = PackCosts([Pack(100, 500), Pack(100, None), Pack(100, 700)])
    assert packs.between(0, 300) == 1200
    assert [packs.are_known(n, n + 100) for n in (0, 100, 200)] == [True, False, True]
    assert not packs.are_known(50, 250)
    assert packs.are_known(100, 100)


@pytest.mark.parametrize("gone", [-3, 0, 7])
def test_nothing_bought_is_worth_nothing(gone):
    assert (PackCosts([]).left(gone), PackCosts([]).paid) == (0, 0)


@settings(max_examples=40)
@given(PACKS, st.lists(st.integers(-50, 400), min_size=2, max_size=6))
def test_parts_are_the_exact_cost_rounded_by_sums(packs, stops):
    row = [Fraction(pack.cost or 0, pack.quantity) for pack in packs for _ in range(pack.quantity)]
    costs = PackCosts(packs)

    sums = [Fraction(0), *accumulate(row)]

    def first(units):
        return floor(sums[min(max(units, 0), len(row))] + Fraction(1, 2))

    for before, after in pairwise(stops):
        assert costs.between(before, after) == first(after) - first(before)
    total = sum(costs.between(before, after) for before, after in pairwise(stops))
    assert costs.between(0, stops[0]) + total + costs.left(stops[-1]) == costs.paid
