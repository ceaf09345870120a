"""The shrunken hazard against the formula with fractions; chances against the curve they come from."""

from fractions import Fraction

import numpy as np
import pytest

from tests.visits.domain.kit.some_edges import edges
from visits.domain.kit.blade_kinds import BladeKind, SharpenMethod
from visits.domain.kit.edge_curve import edge_curve
from visits.domain.kit.edge_life import NEW, EdgeLife, learn_lives

KNIFE, DISC = BladeKind.HOOF_KNIFE, BladeKind.GRINDER_DISC
BELT, STONE = SharpenMethod.BELT, SharpenMethod.STONE
TEN = "12 15 15 18 21 24+ 24 27 30 33+"
LIFE = EdgeLife((1.0, 1.0, 0.8, 0.5, 0.2), 9)


def test_the_kind_is_counted_on_by_its_kaplan_meier_curve():
    found = learn_lives(edges(TEN), 25).kinds[KNIFE]
    curve = edge_curve(edges(TEN))
    assert found.reach == 33
    assert found.dull_edges == 8
    assert found.survival == pytest.approx([curve.at(cows).survival for cows in range(34)], abs=1e-12)


def test_a_narrow_group_is_pulled_towards_the_wide_one_by_the_stated_formula():
    stone = edges("9 15 21+", STONE, blade=2)
    lives = learn_lives([*edges(TEN), *stone], 25)

    def counts(group, cows):
        return sum(e.cows == cows and e.is_dull for e in group), sum(e.cows >= cows for e in group)

    expected = Fraction(1)
    for cows in range(34):
        dull, at_risk = counts([*edges(TEN), *stone], cows)
        own_dull, own_at_risk = counts(stone, cows)
        wide = Fraction(dull, at_risk)
        middle = (8 * wide + own_dull) / (8 + own_at_risk)
        expected *= 1 - (8 * middle + own_dull) / (8 + own_at_risk)
        assert lives.of(2, KNIFE, STONE).survival[cows] == pytest.approx(float(expected), abs=1e-12)


def test_many_edges_of_a_blade_weigh_more_than_the_rest():
    own = edges("40 " * 60, blade=2)
    others = edges("20 " * 60)
    found = learn_lives([*own, *others], 25).of(2, KNIFE, BELT)
    assert found.survival[39] > 0.75
    assert learn_lives([*own[:1], *others], 25).of(2, KNIFE, BELT).survival[39] < 0.2


def test_the_narrowest_that_is_known_is_used():
    lives = learn_lives([*edges(TEN), *edges("9 11", STONE, blade=2)], 25)
    assert lives.of(1, KNIFE, BELT) is lives.blades[1, BELT]
    assert lives.of(1, KNIFE, STONE) is lives.made[KNIFE, STONE]
    assert lives.of(1, KNIFE, NEW) is lives.kinds[KNIFE]
    assert lives.of(3, DISC, BELT) is lives.figure


def test_with_few_dull_edges_the_businesss_own_figure_stands_in():
    found = learn_lives(edges("12 15 15 18 21 24 24 27+"), 25).of(1, KNIFE, BELT)
    assert (found.is_practice, found.reach, found.cows_left(0, 0.1)) == (True, 25, 25)
    assert (found.chance_dull(20, 5), found.chance_dull(20, 6)) == (0, 1)


@pytest.mark.parametrize(
    ("cows", "ahead", "chance"), [(0, 1, 0), (0, 2, 0.2), (2, 1, 0.375), (3, 1, 0.6), (1, 0, 0)]
)
def test_the_chance_of_going_dull_is_told_by_what_is_left_of_the_curve(cows, ahead, chance):
    assert LIFE.chance_dull(cows, ahead) == pytest.approx(chance)


@pytest.mark.parametrize(("cows", "ahead"), [(4, 1), (0, 5), (9, 1)])
def test_beyond_what_any_edge_cut_it_is_counted_as_dull(cows, ahead):
    assert LIFE.is_beyond(cows, ahead)
    assert LIFE.chance_dull(cows, ahead) == 1


def test_it_is_counted_on_for_as_long_as_the_chance_allows():
    assert [LIFE.cows_left(0, chance) for chance in (0, 0.1, 0.2, 0.5, 0.9)] == [1, 1, 2, 3, 4]
    assert LIFE.cows_left(9, 0.5) == 0


@pytest.mark.parametrize("cows", range(7))
@pytest.mark.parametrize("most", [0, 1, 3, 8])
def test_what_is_left_is_a_distribution_with_the_same_chances(cows, most):
    left = LIFE.left(cows, most)
    assert left.sum() == pytest.approx(1)
    assert (left >= 0).all()
    for ahead in range(most + 1):
        assert left[:ahead].sum() == pytest.approx(LIFE.chance_dull(cows, ahead))


def test_a_curve_that_has_come_down_to_nothing_leaves_nothing():
    assert EdgeLife((1.0, 0.5, 0.0, 0.0), 8).left(2, 2) == pytest.approx(np.array([1, 0, 0]))
