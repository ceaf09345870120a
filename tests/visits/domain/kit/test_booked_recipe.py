"""A recipe stands on a line of the ledger in words and is read again as it was."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.actions import BlockKind
from visits.domain.kit.booked_recipe import LONGEST_WORDS, read_recipe, recipe_words
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe

D = Decimal
AMOUNTS = st.decimals("0.01", "99999.99", places=2)
LINES = st.one_of(
    st.builds(Recipe, st.sampled_from([per for per in UsePer if per is not UsePer.VISIT]), AMOUNTS),
    st.builds(Recipe, st.just(UsePer.BLOCK), AMOUNTS, st.sampled_from(BlockKind)),
)


def test_it_reads_as_a_trimmer_would_say_it():
    recipe = [Recipe(UsePer.BLOCK, D("40.00")), Recipe(UsePer.BLOCK, D("35.5"), BlockKind.SHOE)]
    assert recipe_words(recipe) == "40 per block, 35.5 per shoe block"


def test_what_a_visit_uses_once_is_not_of_her():
    assert recipe_words([Recipe(UsePer.VISIT, D(2)), Recipe(UsePer.COW, D(100))]) == "100 per cow"
    assert recipe_words([Recipe(UsePer.VISIT, D(2))]) == ""


@given(st.lists(LINES, min_size=1, max_size=6))
def test_it_is_read_again_as_it_was(lines):
    assert read_recipe(recipe_words(lines)) == lines


def test_what_is_too_long_for_a_line_is_left_out_whole():
    line = Recipe(UsePer.DRESSING, D("99999.99"))
    assert len(recipe_words([line] * 8)) <= LONGEST_WORDS
    assert recipe_words([line] * 9) == ""


@pytest.mark.parametrize(
    "words", ["", "corrected", "40 per moon", "40 per tin block", "40 per block,1 per cow", "40 per block, "]
)
def test_other_words_are_no_recipe(words):
    assert read_recipe(words) is None
