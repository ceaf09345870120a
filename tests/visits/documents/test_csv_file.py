"""CSV that comes back as it went, and of which no spreadsheet runs a cell."""

import csv
import io

import pytest

from tests.visits.documents.data_tables import HARD_TEXTS, TABLE
from visits.documents.csv_file import csv_file
from visits.documents.data_table import DataTable


def read_back(content):
    """As somebody else would: the head, and the rows with one apostrophe taken off each cell."""
    rows = list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))
    return rows[0], [[cell.removeprefix("'") for cell in row] for row in rows[1:]]


def as_text(cell):
    return "" if cell is None else str(cell)


def test_what_is_read_back_is_what_was_there():
    head, rows = read_back(csv_file(TABLE))
    assert head == list(TABLE.headings)
    assert rows == [[as_text(cell) for cell in row] for row in TABLE.rows]


def test_a_spreadsheet_is_told_that_it_is_utf_8():
    assert csv_file(TABLE).startswith(b"\xef\xbb\xbfText,")


@pytest.mark.parametrize("text", [text for text in HARD_TEXTS if text[0] in "=+-@\t"])
def test_no_text_begins_as_a_formula_does(text):
    _, (cell,) = csv.reader(
        io.StringIO(csv_file(DataTable("t", "", ("Note",), [(text,)])).decode("utf-8-sig"), newline="")
    )
    assert cell == f"'{text}"


def test_a_number_below_nought_stays_a_number():
    assert b"plain,-3,-0.25,1999-12-31" in csv_file(TABLE)


def test_lines_end_as_the_standard_says():
    assert csv_file(DataTable("t", "", ("A", "B"), [(1, 2)])) == b"\xef\xbb\xbfA,B\r\n1,2\r\n"


@pytest.mark.parametrize("text", ["\uff1d1+1", "x;=1+1", "x;@SUM(A1)", "x;\uff0b1"])
def test_no_text_runs_where_wide_signs_are_formulas_or_a_semicolon_parts_cells(text):
    content = csv_file(DataTable("t", "", ("Note",), [(text,)])).decode("utf-8-sig")
    cells = content.replace("\r\n", ";").split(";")
    assert not [cell for cell in cells if cell.strip('"').startswith(("=", "@", "\uff1d", "\uff0b"))]
