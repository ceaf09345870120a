import io
import zipfile
from datetime import date, datetime

import pytest
from openpyxl import Workbook

from farms.domain.herd_table import MOST_BYTES, MOST_ROWS, UnreadableHerdList, read_table

TABLE = [["Number", "Calved"], ["7", "2026-01-05"]]


def _workbook(*rows) -> bytes:
    book = Workbook()
    for row in rows:
        book.active.append(row)
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "latin-1"])
def test_a_csv_is_read_whatever_its_delimiter_and_encoding(delimiter, encoding):
    text = f"Number{delimiter}Calved\r\nKäthe{delimiter}2026-01-05\r\n"
    assert read_table(text.encode(encoding)) == [["Number", "Calved"], ["Käthe", "2026-01-05"]]


def test_a_delimiter_inside_quotes_stays_in_its_cell():
    assert read_table(b'Number;Status\n"7; red";dry\n')[1] == ["7; red", "dry"]


def test_a_workbook_gives_numbers_without_point_and_days_as_days():
    content = _workbook(
        ["Number", "Calved", "Electronic id"],
        [
            7.0,
            datetime(2026, 1, 5),  # noqa: DTZ001 because: a spreadsheet knows no zone
            826123450600001,
        ],
        [8, date(2026, 1, 6)],
    )
    assert read_table(content) == [
        ["Number", "Calved", "Electronic id"],
        ["7", "2026-01-05", "826123450600001"],
        ["8", "2026-01-06"],
    ]


def test_a_workbook_is_known_by_what_it_holds_not_by_its_name():
    assert read_table(_workbook(*TABLE)) == TABLE


def test_formulas_are_never_worked_out():
    """openpyxl wrote no value beside the formula, so the cell is empty; nothing is computed here."""
    content = _workbook(["Number", "Status"], [7, "=1+1"])
    assert read_table(content)[1] == ["7"]


def test_empty_rows_between_cows_stay_so_that_lines_count_as_in_the_file():
    assert read_table(b"Number\n7\n\n9\n\n\n") == [["Number"], ["7"], [], ["9"]]


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"x" * (MOST_BYTES + 1), "larger than 5 MB"),
        (b"Number\n" + b"1\n" * (MOST_ROWS + 1), "more than 5000 rows"),
        (b"", "at least one cow"),
        (b"Number\n\n\n", "at least one cow"),
        (b"Num\0ber\n7\n", "no text file"),
        (b"PK\x03\x04 and then rubbish", "cannot be read"),
        (b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(600), "no text file"),
        (b"Number\n7\n" + b"\n" * 30_000, "more than 5000 rows"),
        (b"Number" + b"," * 500 + b"\n7\n", "too many columns"),
    ],
)
def test_a_file_that_cannot_be_used_is_refused_with_what_to_do(content, words):
    with pytest.raises(UnreadableHerdList, match=words):
        read_table(content)


def test_a_workbook_with_too_many_rows_is_refused():
    with pytest.raises(UnreadableHerdList, match="more than 5000 rows"):
        read_table(_workbook(["Number"], *([n] for n in range(MOST_ROWS + 1))))


def test_a_workbook_that_does_harm_is_refused_unopened():
    """What else does harm: tests/farms/domain/test_packed_workbook.py."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/worksheets/sheet1.xml", b"0" * (61 * 1024 * 1024))
    assert len(out.getvalue()) < 100_000
    with pytest.raises(UnreadableHerdList, match="cannot be read"):
        read_table(out.getvalue())
