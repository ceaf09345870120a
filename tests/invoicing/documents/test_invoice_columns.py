from dataclasses import replace
from decimal import Decimal

import pytest

from invoicing.documents.invoice_columns import amount_room, line_columns, unit_words
from trimops.paper.sheet import TEXT_WIDTH


def heads(paper):
    return [column.head.partition("\n")[0] for column in line_columns(paper).columns]


def test_columns_that_no_line_needs_are_left_out(make_invoice):
    paper = make_invoice()
    assert heads(paper) == ["What", "Quantity", "Unit", "Unit price", "VAT rate", "Net"]
    assert "Unit" not in heads(replace(paper, lines=paper.lines[:3]))
    cut = replace(paper.lines[0], allowance=Decimal(1))
    assert "Discount" in heads(replace(paper, lines=(cut,)))


@pytest.mark.parametrize("price", ["1", "1234567.8912"])
def test_together_they_are_as_wide_as_the_page(make_invoice, price):
    paper = make_invoice()
    dear = replace(paper.lines[0], unit_price=Decimal(price))
    columns = line_columns(replace(paper, lines=(dear, *paper.lines[1:]))).columns
    assert sum(column.width for column in columns) == pytest.approx(TEXT_WIDTH)
    assert columns[0].width > 100


def test_a_column_grows_with_its_widest_amount():
    assert amount_room(["1.00", "20.00"], 60) == 60
    assert amount_room(["1.00", "121,931,543,211.40"], 60) > 100
    assert amount_room([], 60) == 60


def test_more_than_two_dozen_lines_are_set_closer(make_invoice):
    paper = make_invoice()
    assert not line_columns(replace(paper, lines=paper.lines[:1] * 24)).is_close
    assert line_columns(replace(paper, lines=paper.lines[:1] * 25)).is_close


def test_the_deepest_unit_price_counts_and_never_less_than_the_currency(make_invoice):
    assert line_columns(make_invoice()).deepest == 3
    assert line_columns(replace(make_invoice(), lines=make_invoice().lines[:1])).deepest == 2


@pytest.mark.parametrize(
    ("unit", "words"), [("C62", ""), ("KMT", "km"), ("SMI", "mi"), ("HUR", "h"), ("cow", "cow")]
)
def test_units_are_told_in_words(unit, words):
    assert unit_words(unit) == words
