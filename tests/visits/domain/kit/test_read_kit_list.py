"""A list of consumables is read with what is wrong said line by line."""

from datetime import date
from decimal import Decimal

import pytest

from visits.domain.actions import BlockKind
from visits.domain.kit.read_kit_list import MOST_LINES, UnreadableKitList, read_kit_list
from visits.domain.kit.stock_kinds import ConsumableKind, Unit, UsePer

PLACES = ("Store", "Van 1")


def read_one(head, cells):
    found = read_kit_list([head.split("|"), cells.split("|")], PLACES)
    (row,) = found.rows
    return row


def test_headings_may_stand_in_any_order_and_spelling():
    row = read_one(
        "Per wooden block|UNIT|Stock in  van 1|Name|Kind|Price of a pack|best before|In use",
        "1|each|12|Block|Blocks|84,50|31/12/2027|no",
    )
    assert row.name == "Block"
    assert row.told == {
        "unit": Unit.EACH,
        "kind": ConsumableKind.BLOCK,
        "price": Decimal("84.5"),
        "expires_on": date(2027, 12, 31),
        "is_active": False,
    }
    assert row.recipe == {(UsePer.BLOCK, BlockKind.WOOD): Decimal(1)}
    assert row.stock == {"Van 1": Decimal(12)}
    assert row.faults == ()


def test_empty_cells_say_nothing():
    row = read_one("name|kind|pack|per cow|stock in Store", "Glue||||")
    assert (row.told, row.recipe, row.stock) == ({}, {}, {})


def test_blanks_of_every_kind_are_one():
    row = read_one("name|note", " Two-part\u00a0 glue |first\nsecond")
    assert (row.name, row.told["note"]) == ("Two-part glue", "first second")


def test_an_apostrophe_before_a_formula_is_taken_off():
    row = read_one("name|note", "'=Glue;'+1|''quoted'")
    assert (row.name, row.told["note"]) == ("=Glue;+1", "'quoted'")


@pytest.mark.parametrize(
    ("heading", "cell", "said"),
    [
        ("kind", "thing", "kind: “thing” is no kind; write Blocks, Glue"),
        ("unit", "litre", "unit: “litre” is no unit; write each, pair, ml or g"),
        ("pack", "0", "pack: “0” is not from 0.01"),
        ("pack", "1,200", "pack: is that 1200 or 1.200"),
        ("days to arrive", "2.5", "days to arrive: “2.5” is no whole number from 0 to 365"),
        ("supplier's mail", "nobody", "supplier's mail: “nobody” is no mail address"),
        ("in use", "perhaps", "in use: “perhaps” is neither yes nor no"),
        ("best before", "31/31/2027", "best before: “31/31/2027” is no day"),
        ("per cow", "-1", "per cow: “-1” is not from 0"),
        ("stock in Store", "many", "stock in Store: “many” is no number"),
        ("service level %", "100", "service level %: “100” is not from 50 to 99.9"),
        ("size", "x" * 41, "size: is longer than 40 signs"),
        ("note", "a\x07b", "note: holds a line end"),
    ],
)
def test_each_fault_names_its_column_and_what_to_mend(heading, cell, said):
    row = read_one(f"name|{heading}", f"Glue|{cell}")
    (fault,) = row.faults
    assert fault.startswith(said)


def test_a_line_without_a_name_and_a_name_twice_are_faults():
    found = read_kit_list(
        [["name", "note"], ["Glue", ""], [], ["", "what is this"], ["glue", "again"]], PLACES
    )
    assert [(row.line, row.faults) for row in found.rows] == [
        (2, ("name: “Glue” stands twice in the list",)),
        (4, ("name: say what it is",)),
        (5, ("name: “glue” stands twice in the list",)),
    ]


def test_headings_that_nobody_knows_are_named():
    found = read_kit_list([["name", "colour", "stock in Van 9"], ["Glue", "red", "3"]], PLACES)
    assert found.passed_over == ("colour", "stock in Van 9")


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ([], "empty"),
        ([[""]], "empty"),
        ([["kind"], ["glue"]], "No column is headed “name”"),
        ([["name", "price", "pack price"], ["Glue", "1", "2"]], "Two columns say the same"),
    ],
)
def test_a_list_that_cannot_be_read_says_why(table, said):
    with pytest.raises(UnreadableKitList, match=said):
        read_kit_list(table, PLACES)


def test_more_lines_than_any_kit_has_are_refused_before_they_are_read():
    table = [["name"], *([f"Thing {n}"] for n in range(MOST_LINES))]
    assert len(read_kit_list(table, PLACES).rows) == MOST_LINES
    with pytest.raises(UnreadableKitList, match="by parts"):
        read_kit_list([*table, ["One more"]], PLACES)
