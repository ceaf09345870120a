from datetime import date

import pytest

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import read_herd_list
from farms.domain.herd_table import UnreadableHerdList, read_table
from visits.documents.csv_file import csv_file
from visits.documents.data_table import DataTable


def _rows(heading: str, *lines: str):
    return read_herd_list([line.split(",") for line in (heading, *lines)]).rows


def test_a_full_row_is_read_with_its_tag_and_days():
    (row,) = _rows(
        "Number,Tag,EID,Status,Born,Calved,Calving due,Dry off due",
        "416,uk 123450 600001,826 123450600001,Milking,2020-05-01,05/01/2026,2026-12-30,1.11.2026",
    )
    assert (row.line, row.number, row.official_tag) == (2, "416", "UK123450600001")
    assert (row.electronic_id, row.status) == ("826123450600001", CowStatus.MILKING)
    assert (row.born_on, row.calved_on) == (date(2020, 5, 1), date(2026, 1, 5))
    assert (row.calving_due, row.dry_off_due) == (date(2026, 12, 30), date(2026, 11, 1))
    assert (row.faults, row.hints) == ((), ())


@pytest.mark.parametrize("heading", ["Number", "COW NO.", "management number", "Cow-Number", "line no"])
def test_the_number_column_may_go_by_several_names(heading):
    assert _rows(heading, "416")[0].number == "416"


@pytest.mark.parametrize("heading", ["Ear Tag", "official tag", "TAG NUMBER"])
def test_the_tag_column_may_go_by_several_names(heading):
    assert _rows(f"Number,{heading}", "1,UK123450600001")[0].official_tag == "UK123450600001"


def test_columns_that_mean_nothing_here_are_named_and_passed_over():
    found = read_herd_list([["Number", "Yield", "Tag", "Ear tag"], ["1", "31", "", "UK123450600001"]])
    assert found.unknown_headings == ("Yield", "Ear tag")
    assert found.rows[0].official_tag == ""


def test_days_are_read_with_the_day_before_the_month():
    assert _rows("Number,Calved", "1,03/04/2026")[0].calved_on == date(2026, 4, 3)


@pytest.mark.parametrize(
    ("heading", "line", "words"),
    [
        ("Number,Calved", "1,31/02/2026", "calved on: “31/02/2026” is no day"),
        ("Number,Calved", "1,04/13/2026", "is no day"),
        ("Number,Born", "1,2026-1", "is no day"),
        ("Number,Born", "1,1890-01-01", "is no day"),
        ("Number,EID", "1,826123", "electronic id: '826123' is not an electronic id: 15 digits"),
        ("Number,EID", "1,826284205700016", "is too large"),
        ("Number,Status", "1,lost", "status: “lost” is none of milking, dry"),
        ("Number,Lactation", "1,2nd", "lactation: “2nd” is no number from 0 to 20"),
        ("Number,Lactation", "1,21", "lactation: “21” is no number"),
        ("Number,Left on", "1,2026-02-01", "left on: say in the column status"),
        ("Number,Status,Left on", "1,dry,2026-02-01", "left on: say in the column status"),
        ("Number,Tag", ",UK123450600001", "number: give the cow a number"),
        ("Number", "123456789012345678901", "at most 20 characters"),
        ("Number,Tag", "1,UK123450600001999", "longer than an official tag can be"),
    ],
)
def test_a_row_that_cannot_be_used_says_which_cell_and_what_to_mend(heading, line, words):
    (row,) = _rows(heading, line)
    assert any(words in fault for fault in row.faults), row.faults


def test_a_check_digit_that_does_not_fit_is_a_hint_and_no_fault():
    (row,) = _rows("Number,Tag", "1,UK123450500001")
    assert row.faults == ()
    assert row.hints == ("official tag: check digit does not fit: expected 6",)


def test_lines_are_counted_as_the_file_shows_them():
    table = [["", ""], ["Number", "Calved"], ["1", ""], ["", ""], ["2", ""]]
    assert [row.line for row in read_herd_list(table).rows] == [3, 5]


def test_a_short_row_is_one_with_empty_cells():
    assert _rows("Number,Tag,Status", "1")[0].faults == ()


@pytest.mark.parametrize(
    ("heading", "lines", "faulty"),
    [
        ("Number", ["5", "5", "6"], [2, 3]),
        ("Number,Tag", ["5,UK123450600001", "6,UK 123450 600001", "7,"], [2, 3]),
        ("Number,EID", ["5,826123450600001", "6,826 123450600001"], [2, 3]),
        ("Number,Tag", ["5,UK123450600001", "5,UK123450700002"], []),
        ("Number,Tag", ["5,UK123450600001", "5,"], [3]),
    ],
)
def test_what_stands_twice_is_a_fault_unless_the_tags_tell_the_cows_apart(heading, lines, faulty):
    assert [row.line for row in _rows(heading, *lines) if row.faults] == faulty


@pytest.mark.parametrize("table", [[["Tag"], ["UK123450600001"]], [["", ""]], []])
def test_a_list_without_a_number_column_is_refused_as_a_whole(table):
    with pytest.raises(UnreadableHerdList):
        read_herd_list(table)


def test_the_number_of_the_lactation_and_the_day_she_left_are_read():
    row, heifer = _rows("Number,Status,Lactation,Left on", "1,sold,4,01/02/2026", "2,heifer,0,")
    assert (row.lactation, row.left_on, row.faults) == (4, date(2026, 2, 1), ())
    assert (heifer.lactation, heifer.faults) == (None, ())


@pytest.mark.parametrize("number", ["-7", "+7", "=7", "@7", "'=7", "7", "O'Hara", "'s"])
def test_a_list_that_we_wrote_ourselves_is_read_as_it_was(number):
    """Our CSV puts an apostrophe before what a spreadsheet would run (`visits/documents/csv_file.py`)."""
    written = csv_file(DataTable("cows", "", ("number", "status"), [(number, "dry")]))
    assert read_herd_list(read_table(written)).rows[0].number == number
