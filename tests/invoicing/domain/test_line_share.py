"""A line without the work that is held elsewhere."""

from decimal import Decimal as D

from invoicing.domain.line_share import line_without
from invoicing.domain.pricing import DraftLine, PriceItem

LINE = DraftLine(
    PriceItem.BLOCK,
    "Block",
    D(3),
    "C62",
    D("11.25"),
    "S",
    D(20),
    "3 blocks",
    allowance=D("1.00"),
    allowance_percent=D(3),
    keys=("a", "b", "c"),
)


def test_nothing_taken_leaves_the_line_as_it_is():
    assert line_without(LINE, {"x"}) is LINE


def test_what_is_left_keeps_its_price_and_its_share_of_the_discount():
    left = line_without(LINE, {"b"})
    assert (left.quantity, left.unit_price, left.allowance, left.keys) == (
        D("2.0000"),
        D("11.25"),
        D("0.67"),
        ("a", "c"),
    )
    assert "2 of 3" in left.why


def test_a_line_of_which_all_is_taken_is_gone():
    assert line_without(LINE, {"a", "b", "c"}) is None
