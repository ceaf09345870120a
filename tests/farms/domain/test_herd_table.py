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
    assert read_table("herd.csv", text.encode(encoding)) == [["Number", "Calved"], ["Käthe", "2026-01-05"]]


def test_a_delimiter_inside_quotes_stays_in_its_cell():
    assert read_table("a.csv", b'Number;Status\n"7; red";dry\n')[1] == ["7; red", "dry"]


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
    assert read_table("herd.xlsx", content) == [
        ["Number", "Calved", "Electronic id"],
        ["7", "2026-01-05", "826123450600001"],
        ["8", "2026-01-06"],
    ]


def test_a_workbook_is_known_by_what_it_holds_not_by_its_name():
    assert read_table("herd.csv", _workbook(*TABLE)) == TABLE


def test_formulas_are_never_worked_out():
    """openpyxl wrote no value beside the formula, so the cell is empty; nothing is computed here."""
    content = _workbook(["Number", "Status"], [7, "=1+1"])
    assert read_table("herd.xlsx", content)[1] == ["7"]


def test_empty_rows_between_cows_stay_so_that_lines_count_as_in_the_file():
    assert read_table("a.csv", b"Number\n7\n\n9\n\n\n") == [["Number"], ["7"], [], ["9"]]


@pytest.mark.parametrize(
    ("name", "content", "words"),
    [
        ("a.csv", b"x" * (MOST_BYTES + 1), "larger than 5 MB"),
        ("a.csv", b"Number\n" + b"1\n" * (MOST_ROWS + 1), "more than 5000 rows"),
        ("a.csv", b"", "at least one cow"),
        ("a.csv", b"Number\n\n\n", "at least one cow"),
        ("a.csv", b"Num\0ber\n7\n", "no text file"),
        ("a.xlsx", b"PK\x03\x04 and then rubbish", "cannot be read"),
        ("a.xlsx", b"Number\n7\n", "cannot be read"),
    ],
)
def test_a_file_that_cannot_be_used_is_refused_with_what_to_do(name, content, words):
    with pytest.raises(UnreadableHerdList, match=words):
        read_table(name, content)


def test_a_workbook_with_too_many_rows_is_refused():
    with pytest.raises(UnreadableHerdList, match="more than 5000 rows"):
        read_table("a.xlsx", _workbook(["Number"], *([n] for n in range(MOST_ROWS + 1))))


def test_a_small_file_that_unpacks_to_too_much_is_refused_unopened():
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr("xl/worksheets/sheet1.xml", b"0" * (61 * 1024 * 1024))
    assert len(out.getvalue()) < 100_000
    with pytest.raises(UnreadableHerdList, match="unpacks to too much"):
        read_table("bomb.xlsx", out.getvalue())


def test_a_workbook_whose_words_multiply_themselves_is_refused():
    """A document type with entities that name each other: no spreadsheet program writes one."""
    source = zipfile.ZipFile(io.BytesIO(_workbook(*TABLE)))
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as packed:
        for part in source.namelist():
            body = source.read(part)
            if part == "xl/worksheets/sheet1.xml":
                body = b'<!DOCTYPE a [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;">]>' + body
            packed.writestr(part, body)
    with pytest.raises(UnreadableHerdList, match="cannot be read"):
        read_table("a.xlsx", out.getvalue())
