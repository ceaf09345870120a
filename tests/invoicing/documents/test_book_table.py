from decimal import Decimal as D

from invoicing.documents.book_table import BookTable
from visits.documents.data_table import DataTable


def table(*rows, headings=("Number", "Currency", "Total")):
    return BookTable(DataTable("Anything", "", headings, rows), ("Total",), headings, "Total")


def test_columns_are_added_up_for_each_currency():
    sums = table(("1", "GBP", D("1.10")), ("2", "EUR", D(5)), ("3", "GBP", D("-0.10"))).sums()
    assert sums == [("EUR", {"Total": D(5)}), ("GBP", {"Total": D("1.00")})]


def test_an_empty_cell_adds_nothing():
    assert table(("1", "GBP", None), ("2", "GBP", D(2))).sums() == [("GBP", {"Total": D(2)})]


def test_without_currencies_there_is_one_sum():
    found = table((D(1),), (D(2),), headings=("Total",))
    assert (found.sums(), found.column("Total")) == ([("", {"Total": D(3)})], 0)


def test_nothing_has_no_sum():
    assert table().sums() == []
