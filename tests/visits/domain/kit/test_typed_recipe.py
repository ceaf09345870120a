"""What a person types as a recipe, and what is said of nonsense."""

from decimal import Decimal

import pytest

from visits.domain.actions import BlockKind
from visits.domain.kit.stock_kinds import Unit, UsePer
from visits.domain.kit.typed_recipe import TypedLine, read_recipe_lines
from visits.domain.kit.use_rules import Recipe

D = Decimal


HEAVIER = D("1.2")


def read(*lines, counted=Unit.ML, density=HEAVIER):
    return read_recipe_lines(lines, counted, density)


def test_glue_by_weight_is_kept_in_the_ml_it_is_counted_in():
    lines = (TypedLine(UsePer.BLOCK, D(48), Unit.GRAM), TypedLine(UsePer.COW, D("0.5")))
    assert read(*lines) == ([Recipe(UsePer.BLOCK, D(40)), Recipe(UsePer.COW, D("0.5"))], [])


def test_a_kind_of_block_and_blocks_of_every_kind_are_two_occasions():
    lines = (TypedLine(UsePer.BLOCK, D(10)), TypedLine(UsePer.BLOCK, D(5), block_kind=BlockKind.SHOE))
    assert len(read(*lines)[0]) == 2


@pytest.mark.parametrize(
    ("lines", "counted", "density", "words"),
    [
        ([TypedLine(UsePer.BLOCK, None)], Unit.ML, None, "Say how much is used with every block put on."),
        ([TypedLine(UsePer.BLOCK, D(0))], Unit.ML, None, "more than 0"),
        ([TypedLine(UsePer.COW, D(-1))], Unit.EACH, None, "more than 0"),
        ([TypedLine(UsePer.COW, D(100_000))], Unit.EACH, None, "at most 99,999.99"),
        ([TypedLine(UsePer.COW, D("NaN"))], Unit.EACH, None, "more than 0"),
        ([TypedLine(UsePer.BLOCK, D(40), Unit.GRAM)], Unit.ML, None, "how many grams a ml weighs"),
        ([TypedLine(UsePer.BLOCK, D(40), Unit.GRAM)], Unit.EACH, D(1), "cannot be in g"),
        ([TypedLine(UsePer.COW, D("0.004"))], Unit.ML, None, "no amount in ml"),
        ([TypedLine(UsePer.COW, D(1), None, BlockKind.WOOD)], Unit.EACH, None, "goes with a block put on"),
        (
            [TypedLine(UsePer.WRAP, D(1)), TypedLine(UsePer.WRAP, D(2))],
            Unit.EACH,
            None,
            "2 lines for every foot wrapped",
        ),
    ],
)
def test_nonsense_is_refused_with_words(lines, counted, density, words):
    (fault,) = read(*lines, counted=counted, density=density)[1]
    assert words in fault


def test_every_fault_is_told_at_once():
    assert (
        len(read(TypedLine(UsePer.BLOCK, None), TypedLine(UsePer.COW, D(0)), TypedLine(UsePer.COW, D(1)))[1])
        == 3
    )
