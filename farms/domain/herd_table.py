"""A herd list file as a plain table: CSV or XLSX bytes in, rows of text out."""

import csv
import io
import re
from collections.abc import Iterable
from datetime import date, datetime

from openpyxl import load_workbook

from farms.domain.packed_workbook import NotOpened, refuse_bombs

MOST_ROWS = 5_000
MOST_BYTES = 5 * 1024 * 1024
MOST_COLUMNS = 400
_MOST_LINES = 20_000
"""Of a CSV with its empty ones, which programs put below the last cow."""


class UnreadableHerdList(ValueError):
    """The file as a whole cannot be read; the message says what to do."""


def read_table(content: bytes) -> list[list[str]]:
    """All rows as text, the head first. UnreadableHerdList for what is too large or no table.

    Whether it is a spreadsheet is seen from what it holds, whatever it is called.
    """
    if len(content) > MOST_BYTES:
        raise UnreadableHerdList("The file is larger than 5 MB: split it, or save only the list of cows.")
    rows = _read_workbook(content) if content[:4] == b"PK\x03\x04" else _read_csv(content)
    if len(rows) > MOST_ROWS + 1:
        raise UnreadableHerdList(f"The list has more than {MOST_ROWS} rows: split it.")
    if sum(any(row) for row in rows) < 2:
        raise UnreadableHerdList("The list needs a row of headings and at least one cow.")
    return rows


def _read_csv(content: bytes) -> list[list[str]]:
    text = _decode(content)
    if "\0" in text:
        raise UnreadableHerdList("This is no text file: save the list as CSV or XLSX.")
    head = re.split(r"[\r\n]", text.lstrip(), maxsplit=1)[0]
    delimiter = max(";\t,", key=head.count)
    rows: list[list[str]] = []
    try:
        for row in csv.reader(io.StringIO(text), delimiter=delimiter):
            if len(rows) == _MOST_LINES or len(row) > MOST_COLUMNS:
                raise UnreadableHerdList(
                    f"The list has more than {MOST_ROWS} rows, or too many columns: split it."
                )
            rows.append([cell.strip() for cell in row])
    except csv.Error as fault:
        raise UnreadableHerdList(
            f"The CSV cannot be read ({fault}): save it again from the program."
        ) from fault
    return _without_empty_end(rows)


def _decode(content: bytes) -> str:
    for encoding in ("utf-8-sig", "utf-16") if content[:2] in (b"\xff\xfe", b"\xfe\xff") else ("utf-8-sig",):
        try:
            return content.decode(encoding)
        except UnicodeDecodeError:
            continue
    return content.decode("latin-1")


def _read_workbook(content: bytes) -> list[list[str]]:
    try:
        refuse_bombs(content)
        book = load_workbook(io.BytesIO(content), read_only=True, data_only=True)
        sheet = book.worksheets[0]
        rows = [_texts(row) for row in sheet.iter_rows(max_row=MOST_ROWS + 2, max_col=40, values_only=True)]
    except NotOpened as fault:
        raise UnreadableHerdList(
            "The spreadsheet cannot be read, or holds more than a list of cows: save only that, or save it as CSV."
        ) from fault
    except Exception as fault:  # because: a broken workbook fails in any of several libraries
        raise UnreadableHerdList("The spreadsheet cannot be read: save it again as XLSX or CSV.") from fault
    return _without_empty_end(rows)


def _without_empty_end(rows: list[list[str]]) -> list[list[str]]:
    """Empty rows after the last cow go; those before it stay, so that lines count as the file shows them."""
    while rows and not any(rows[-1]):
        rows.pop()
    return rows


def _texts(cells: Iterable[object]) -> list[str]:
    texts = [_text(cell) for cell in cells]
    while texts and not texts[-1]:
        texts.pop()
    return texts


def _text(cell: object) -> str:
    if cell is None:
        return ""
    if isinstance(cell, datetime):
        return cell.date().isoformat()
    if isinstance(cell, date):
        return cell.isoformat()
    if isinstance(cell, float) and cell.is_integer():
        return str(int(cell))
    return str(cell).strip()
