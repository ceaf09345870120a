"""A herd list file as a plain table: CSV or XLSX bytes in, rows of text out."""

import csv
import io
import zipfile
from collections.abc import Iterable
from datetime import date, datetime

from openpyxl import load_workbook

MOST_ROWS = 5_000
MOST_BYTES = 5 * 1024 * 1024
MOST_UNPACKED = 60 * 1024 * 1024


class UnreadableHerdList(ValueError):
    """The file as a whole cannot be read; the message says what to do."""


def read_table(file_name: str, content: bytes) -> list[list[str]]:
    """All rows as text, the head first. UnreadableHerdList for what is too large or no table."""
    if len(content) > MOST_BYTES:
        raise UnreadableHerdList("The file is larger than 5 MB: split it, or save only the list of cows.")
    is_workbook = file_name.lower().endswith((".xlsx", ".xlsm")) or content[:2] == b"PK"
    rows = _read_workbook(content) if is_workbook else _read_csv(content)
    if len(rows) > MOST_ROWS + 1:
        raise UnreadableHerdList(f"The list has more than {MOST_ROWS} rows: split it.")
    if sum(any(row) for row in rows) < 2:
        raise UnreadableHerdList("The list needs a row of headings and at least one cow.")
    return rows


def _read_csv(content: bytes) -> list[list[str]]:
    text = _decode(content)
    if "\0" in text:
        raise UnreadableHerdList("This is no text file: save the list as CSV or XLSX.")
    head = text.strip().splitlines()[0] if text.strip() else ""
    delimiter = max(";\t,", key=head.count)
    try:
        rows = [[cell.strip() for cell in row] for row in csv.reader(io.StringIO(text), delimiter=delimiter)]
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
        _check_packing(content)
        book = load_workbook(io.BytesIO(content), read_only=True, data_only=True)
        sheet = book.worksheets[0]
        rows = [_texts(row) for row in sheet.iter_rows(max_row=MOST_ROWS + 2, max_col=40, values_only=True)]
    except UnreadableHerdList:
        raise
    except Exception as fault:  # because: a broken workbook fails in any of several libraries
        raise UnreadableHerdList("The spreadsheet cannot be read: save it again as XLSX or CSV.") from fault
    return _without_empty_end(rows)


def _check_packing(content: bytes) -> None:
    """A small file may unpack to gigabytes, or hold words that multiply themselves; neither comes from a farm."""
    with zipfile.ZipFile(io.BytesIO(content)) as packed:
        # The sizes stand in the directory, and zipfile reads no part beyond the size given there.
        if sum(part.file_size for part in packed.infolist()) > MOST_UNPACKED:
            raise UnreadableHerdList("The spreadsheet unpacks to too much: save only the list of cows.")
        for name in packed.namelist():
            if b"<!DOCTYPE" in packed.read(name).replace(b"\0", b""):
                raise UnreadableHerdList("The spreadsheet cannot be read: save it again as XLSX or CSV.")


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
