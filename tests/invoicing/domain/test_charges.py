from datetime import date
from decimal import Decimal as D

from invoicing.domain.charges import LONGEST_WHY, cows_in_words, piece_charges, shortened
from invoicing.domain.pricing import PriceItem
from tests.invoicing.domain.small_book import cows, piece, visit

FEBRUARY = date(2026, 2, 20)


def test_pieces_are_counted_by_item_and_name_their_work():
    blocks = [piece(PriceItem.BLOCK, "cow 102", foot="LH"), piece(PriceItem.BLOCK, "101", foot="RH")]
    charges = piece_charges(visit(*blocks, *cows(3)), 0)
    assert [(c.item.value, c.quantity) for c in charges] == [
        ("functional", D(3)),
        ("block", D(2)),
        ("call_out", D(1)),
    ]
    assert charges[1].keys == tuple(block.key for block in blocks)
    assert charges[1].why == "2 noted at the crush: 102 LH, 101 RH"
    assert charges[2].why == "one visit"


def test_what_is_under_guarantee_is_apart_and_says_so():
    again = piece(PriceItem.CHECK, "115", rechecks_trim_on=FEBRUARY)
    charges = piece_charges(visit(piece(PriceItem.CHECK, "101"), again), 21)
    assert [(c.item.value, c.is_free) for c in charges] == [
        ("check", False),
        ("check", True),
        ("call_out", False),
    ]
    assert charges[1].why == "free within 21 days, trimmed 20 Feb 2026: 1 noted at the crush: 115"


def test_a_block_on_a_foot_looked_at_again_is_free_but_not_with_a_full_trim():
    block = piece(PriceItem.BLOCK, "115", trim_id=5, foot="LH", rechecks_trim_on=FEBRUARY)
    again = piece(PriceItem.CHECK, "115", trim_id=5, rechecks_trim_on=FEBRUARY)
    full = piece(PriceItem.FUNCTIONAL, "115", trim_id=5, rechecks_trim_on=FEBRUARY, had_full_trim=True)
    assert [c.is_free for c in piece_charges(visit(again, block, call_out=False), 21)] == [True, True]
    assert [c.is_free for c in piece_charges(visit(full, block, call_out=False), 21)] == [False, False]


def test_many_cows_are_named_as_far_as_there_is_room():
    words = cows_in_words(cows(80))
    assert len(words) <= LONGEST_WHY
    assert words.startswith("80 noted at the crush: 101, 102, ")
    named = words.split(": ")[1].split(" and ")[0].split(", ")
    assert words.endswith(f"and {80 - len(named)} more")


def test_long_words_end_in_dots():
    assert shortened("abcdef", 4) == "abc…"
    assert shortened("abcd", 4) == "abcd"
