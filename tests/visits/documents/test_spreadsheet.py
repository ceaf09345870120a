"""A spreadsheet that comes back as it went, read by the library's reader."""

import io
from datetime import UTC, date, datetime

from openpyxl import load_workbook

from tests.visits.documents.data_tables import TABLE
from visits.documents.data_table import DataTable
from visits.documents.spreadsheet import spreadsheet

AT = datetime(2026, 3, 2, 12, tzinfo=UTC)
COWS = DataTable("cows", "", ("Number",), [("101",)])


def opened(*tables):
    return load_workbook(io.BytesIO(spreadsheet(tables, AT)))


def plain(value):
    return value.date() if isinstance(value, datetime) else value


def test_what_is_read_back_is_what_was_there_text_number_and_day():
    sheet = opened(TABLE)["hard cases"]
    head, *rows = sheet.iter_rows(values_only=True)
    assert head == TABLE.headings
    assert [tuple(plain(cell) for cell in row) for row in rows] == [
        tuple(float(cell) if index == 2 and cell is not None else cell for index, cell in enumerate(row))
        for row in TABLE.rows
    ]


def test_no_text_is_a_formula():
    sheet = opened(TABLE)["hard cases"]
    assert {cell.data_type for cell in sheet["A"]} <= {"s", "n", "inlineStr"}
    assert [cell.value for cell in sheet["A"] if cell.value == "=HYPERLINK(1)"]


def test_each_table_has_its_sheet_with_a_head_that_stays_and_columns_of_a_readable_width():
    book = opened(COWS, TABLE)
    assert book.sheetnames == ["cows", "hard cases"]
    sheet = book["hard cases"]
    assert sheet.freeze_panes == "A2"
    assert sheet["A1"].font.bold
    assert 8 <= sheet.column_dimensions["D"].width <= 48
    assert sheet["D2"].number_format == "yyyy-mm-dd"
    assert plain(sheet["D2"].value) == date(2026, 3, 2)


def test_the_same_tables_make_the_same_bytes_and_the_moment_is_the_one_given():
    assert spreadsheet([TABLE], AT) == spreadsheet([TABLE], AT)
    assert opened(COWS).properties.modified == AT.replace(tzinfo=None)


def test_signs_that_are_no_text_are_left_out():
    sheet = opened(DataTable("t", "", ("Note",), [("a\x07\uffff\ufffeb",), ("z" * 40_000,)]))["t"]
    assert sheet["A2"].value == "ab"
    assert len(sheet["A3"].value) == 32_767, "more, and a spreadsheet does not open the file"
