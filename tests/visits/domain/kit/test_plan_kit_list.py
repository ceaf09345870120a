"""What a list of consumables would do is known before it is done."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from visits.domain.kit.kit_sheet import KitSheet
from visits.domain.kit.plan_kit_list import Change, KnownItem, cell_words, plan_kit_list
from visits.domain.kit.read_kit_list import read_kit_list
from visits.domain.kit.stock_kinds import ConsumableKind, Unit, UsePer

GLUE = KitSheet(
    "Glue", ConsumableKind.GLUE, Unit.ML, pack=Decimal(2000), recipe={(UsePer.BLOCK, None): Decimal(40)}
)


def plan(head, *lines, known=()):
    table = [head.split("|"), *(line.split("|") for line in lines)]
    return plan_kit_list(read_kit_list(table, ("Store", "Van 1")), known)


def test_a_new_consumable_comes_with_its_recipe_and_its_stock():
    found = plan(
        "name|kind|unit|pack|per block of any kind|stock in Store|stock in Van 1|lot|best before|stock cost",
        "Glue|glue|ml|2000|40|3000|500|L7|2027-03-02|180",
    )
    (item,) = found.new
    assert item.sheet == GLUE
    assert item.stock.by_place == {"Store": Decimal(3000), "Van 1": Decimal(500)}
    assert item.stock.total == Decimal(3500)
    assert (item.stock.code, item.stock.expires_on, item.stock.cost) == ("L7", date(2027, 3, 2), Decimal(180))
    assert not (found.changed)
    assert not (found.unchanged)
    assert not (found.refused)


def test_a_known_one_is_found_by_its_name_and_only_what_is_said_changes():
    known = [KnownItem(7, GLUE, has_lines=True)]
    found = plan("name|pack|per block of any kind|per cow|size", "gLUE|1000|0|0.5|", known=known)
    (item,) = found.changed
    assert item.key == 7
    assert item.sheet == replace(GLUE, pack=Decimal(1000), recipe={(UsePer.COW, None): Decimal("0.5")})
    assert item.changes == (
        Change("pack", "2000", "1000"),
        Change("per block of any kind", "40", ""),
        Change("per cow", "", "0.5"),
    )


def test_stock_is_read_in_once_only():
    found = plan("name|stock in Store", "Glue|5", known=[KnownItem(7, GLUE)])
    assert [item.note for item in found.notes] == [
        "stock is read in with a new consumable only: count the place instead"
    ]
    assert found.unchanged[0].stock.by_place == {}


@pytest.mark.parametrize(
    ("head", "line", "said"),
    [
        ("name|unit", "Wrap|each", "kind: needed for a new consumable"),
        ("name|kind", "Wrap|wrap", "unit: needed for a new consumable"),
        ("name|kind|unit", "Paste|other|g", "pack: say how much one tin, bag or canister holds"),
        ("name|kind|unit|stock in Store", "Wrap|wrap|each|-2", "stock in Store: is below nought"),
        ("name|kind|unit|stock in Store", "Wrap|wrap|each|2.5", "stock in Store: write whole pieces"),
        ("name|kind|unit|pack", "Wrap|wrap|each|2.5", "pack: what is counted in each comes in whole packs"),
        ("name|kind|unit|lot", "Wrap|wrap|each|L1", "stock: a lot, a date or a cost stands there"),
        ("name|unit", "Glue|g", "unit: it is counted in “ml” since its ledger began"),
    ],
)
def test_what_cannot_be_done_is_refused_in_words(head, line, said):
    found = plan(head, line, known=[KnownItem(7, GLUE, has_lines=True)])
    (row,) = found.refused
    assert row.faults[0].startswith(said)


def test_before_its_first_line_the_unit_may_change():
    found = plan("name|unit", "Glue|g", known=[KnownItem(7, GLUE)])
    assert found.changed[0].changes == (Change("unit", "ml", "g"),)


@pytest.mark.parametrize(
    ("value", "words"),
    [(None, ""), (True, "yes"), (Decimal("40.00"), "40"), (Decimal("1E+3"), "1000"), (5, "5")],
)
def test_a_value_is_told_as_a_cell(value, words):
    assert cell_words(value) == words
