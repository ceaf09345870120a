"""Headings of a list of consumables."""

from dataclasses import fields

from visits.domain.actions import BlockKind
from visits.domain.kit.kit_list_columns import COLUMNS, read_heads
from visits.domain.kit.kit_sheet import KitSheet
from visits.domain.kit.stock_kinds import UsePer

STOCK = {"code", "expires_on", "cost"}


def test_everything_that_is_said_of_a_consumable_has_its_column():
    assert {column.key for column in COLUMNS} - STOCK == {each.name for each in fields(KitSheet)} - {"recipe"}


def test_headings_are_known_by_our_word_and_by_others():
    heads = read_heads(["Lead time", "PER  SHOE", "stock in VAN 1", "", "Price", "colour", "cost"], ["Van 1"])
    assert {index: column.key for index, column in heads.columns.items()} == {0: "lead_days", 4: "price"}
    assert heads.occasions == {1: (UsePer.BLOCK, BlockKind.SHOE)}
    assert heads.places == {2: "Van 1"}
    assert heads.unknown == ("colour", "cost")


def test_two_columns_that_say_the_same_are_named():
    assert read_heads(["name", "Item", "per cow", "Per Cow"], []).twice == ("Item", "Per Cow")
