"""A table is as wide as its head."""

import pytest

from visits.documents.data_table import DataTable, yes_no


def test_a_row_that_lacks_a_cell_is_refused():
    with pytest.raises(ValueError, match="cows: 1 cells under 2 headings"):
        DataTable("cows", "", ("Number", "Status"), [("101",)])


def test_a_heading_that_stands_twice_is_refused():
    with pytest.raises(ValueError, match="cows: a heading stands twice"):
        DataTable("cows", "", ("Number", "Number"), [])


def test_a_tick_is_told_in_words():
    assert (yes_no(True), yes_no(False)) == ("yes", "no")
