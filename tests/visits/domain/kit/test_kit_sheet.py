"""A consumable as plain values."""

import pytest

from visits.domain.actions import BlockKind
from visits.domain.kit.kit_sheet import OCCASIONS, full_name
from visits.domain.kit.stock_kinds import UsePer


@pytest.mark.parametrize(
    ("name", "size", "words"),
    [("Wrap", "100 mm", "Wrap, 100 mm"), ("Block 130 MM", "130 mm", "Block 130 MM"), ("Glue", "", "Glue")],
)
def test_the_size_is_said_once(name, size, words):
    assert full_name(name, size) == words


def test_every_occasion_that_a_recipe_knows_can_be_asked_for():
    blocks = {(UsePer.BLOCK, kind) for kind in BlockKind}
    assert set(OCCASIONS) == {(per, None) for per in UsePer} | blocks
