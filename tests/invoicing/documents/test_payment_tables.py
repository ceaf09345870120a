import pytest

from invoicing.documents.payment_tables import AGES, open_table, payments_table, write_offs_table
from tests.invoicing.documents.book_rows import open_row, paid_row, write_off_row


def test_a_payment_says_what_it_was_set_against():
    found = payments_table([paid_row(), paid_row("-5.00", left=0, settled=())])
    assert found.table.rows[0][found.column("Set against")] == "INV-1 40.00"
    assert found.sums() == [("GBP", {"Amount": 45, "Not set against any": 10})]


def test_what_was_written_off_is_added_up():
    assert write_offs_table([write_off_row(), write_off_row("4.00")]).sums() == [("GBP", {"Amount": 7})]


@pytest.mark.parametrize(
    ("late", "age"), [(0, 0), (1, 1), (30, 1), (31, 2), (60, 2), (61, 3), (90, 3), (91, 4), (999, 4)]
)
def test_the_amount_stands_in_the_column_of_its_age(late, age):
    found = open_table([open_row(late)])
    cells = [found.table.rows[0][found.column(name)] for name in AGES]
    assert [place for place, cell in enumerate(cells) if cell is not None] == [age]


def test_the_ages_add_up_to_what_is_open():
    ((_, sums),) = open_table([open_row(late, "7.50") for late in (0, 12, 45, 70, 400)]).sums()
    assert sums["Open"] == sum(sums[name] for name in AGES)


def test_what_a_page_shows_are_columns_of_the_file():
    for found in (payments_table([]), write_offs_table([]), open_table([])):
        assert {*found.shown, *found.summed} <= set(found.table.headings)
