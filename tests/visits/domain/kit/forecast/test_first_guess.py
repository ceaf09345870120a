from decimal import Decimal

import pytest

from visits.domain.actions import BlockKind
from visits.domain.kit.forecast.first_guess import NO_GUESS, first_guess
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe


def recipe(per, quantity="1", kind=None):
    return Recipe(per, Decimal(quantity), kind)


def test_blocks_are_put_on_as_often_as_was_published():
    """Cramer et al. 2008, J Dairy Sci 91:3888: 2.2 % of cows trimmed in free stalls."""
    guess = first_guess([recipe(UsePer.BLOCK, "40")])
    assert guess.chances.routine == pytest.approx(0.022)
    assert guess.sizes == ((Decimal(40), 0.022),)
    assert guess.chances.routine < guess.chances.corrective < guess.chances.urgent


def test_one_kind_of_block_is_some_of_them():
    whole, wood = (first_guess([recipe(UsePer.BLOCK, kind=kind)]) for kind in (None, BlockKind.WOOD))
    assert 0 < wood.chances.urgent < whole.chances.urgent


def test_what_every_cow_uses_is_sure_and_feet_are_two_or_four():
    gloves, feet = first_guess([recipe(UsePer.COW, "0.5")]), first_guess([recipe(UsePer.FOOT, "3")])
    assert gloves.chances.routine == gloves.chances.urgent == 1
    assert dict(feet.sizes) == pytest.approx({Decimal(6): 0.6, Decimal(12): 0.4})


def test_with_two_occasions_a_cow_uses_some_if_either_comes():
    both = first_guess([recipe(UsePer.WRAP), recipe(UsePer.DRESSING)])
    assert both.chances.routine == pytest.approx(1 - 0.97 * 0.92)
    assert first_guess([recipe(UsePer.WRAP), recipe(UsePer.COW)]).chances.routine == 1


def test_what_a_visit_uses_is_no_cow_s():
    guess = first_guess([recipe(UsePer.VISIT, "200"), recipe(UsePer.VISIT, "50")])
    assert (guess.per_visit, guess.sizes, guess.chances) == (Decimal(250), (), NO_GUESS.chances)
    assert first_guess([]) == NO_GUESS
