"""What a cow and a visit use up by the recipes; worked by hand."""

from decimal import Decimal

from tests.factories import blocked_foot, trimmed_foot
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry
from visits.domain.feet import Foot
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe, used_by_cow, used_by_visit

D = Decimal
RECIPES = {
    1: [Recipe(UsePer.BLOCK, D(1), BlockKind.WOOD)],
    2: [Recipe(UsePer.BLOCK, D(40)), Recipe(UsePer.BLOCK, D("5.5"), BlockKind.SHOE)],
    3: [Recipe(UsePer.WRAP, D(1))],
    4: [Recipe(UsePer.FOOT, D("0.25")), Recipe(UsePer.COW, D(2)), Recipe(UsePer.VISIT, D(9))],
    5: [Recipe(UsePer.DRESSING, D(1))],
    6: [Recipe(UsePer.VISIT, D(1)), Recipe(UsePer.VISIT, D("0.5"))],
}


def test_a_cow_with_a_block_a_shoe_and_a_wrap():
    shoe = blocked_foot(Foot.RIGHT_HIND, BlockKind.SHOE)
    wrapped = trimmed_foot(Foot.LEFT_FORE, ActionEntry(ActionKind.WRAP))
    entry = CowEntry(feet=(blocked_foot(), shoe, wrapped))
    assert used_by_cow(RECIPES, entry) == {1: D(1), 2: D("85.5"), 3: D(1), 4: D("2.75")}


def test_a_cow_with_nothing_done_uses_what_every_cow_uses():
    assert used_by_cow(RECIPES, CowEntry()) == {4: D(2)}


def test_a_visit_uses_its_own_lines_once():
    assert used_by_visit(RECIPES) == {4: D(9), 6: D("1.5")}
