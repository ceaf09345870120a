"""Tables as one spreadsheet, a sheet each: typed cells, a head that stays in sight, columns as wide as what is in them.

The library makes the workbook with its heads and looks; the rows below are put into its sheets as they are, because
it takes half a minute for the ten years of a large herd, cell by cell. Text is stored as text even where it begins like
a formula. The same tables make the same bytes.
"""

import io
import re
import zipfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import cache, lru_cache
from xml.sax.saxutils import escape

from openpyxl import Workbook
from openpyxl.cell.cell import Cell, WriteOnlyCell
from openpyxl.styles import Alignment, Font, PatternFill
from openpyxl.utils import get_column_letter
from openpyxl.worksheet._write_only import WriteOnlyWorksheet

from trimops.kernel.xml_signs import NOT_IN_XML
from visits.documents.data_table import Cell as Value
from visits.documents.data_table import DataTable
from visits.documents.packed_files import packed

_HEAD = Font(bold=True)
_HEAD_FILL = PatternFill("solid", fgColor="E7E5DC")
_WRAP = Alignment(vertical="top", wrap_text=True)
# because: the stubs leave out what a write-only sheet takes over from a common one
_NARROW, _WIDE = 8, 48
_CHANGED = re.compile(rb"(<dcterms:(created|modified)[^>]*>)[^<]*(?=</dcterms:\2>)")
"""The tag stays as it is: which names of XML it declares depends on the XML library that is installed."""
_LONGEST = 32_767
"""Signs that a spreadsheet takes in a cell."""
LOOKED_AT = 2_000
"""Rows that the width of a column is taken from."""
_END_OF_ROWS = b"</sheetData>"
_column = cache(get_column_letter)
_DAY_NOUGHT = date(1899, 12, 30)
"""The day that a spreadsheet counts from, for days since March 1900."""


@dataclass(frozen=True)
class _Looks:
    """Numbers of the looks that the workbook knows: of a day, and of text that is never run."""

    day: int
    text: int


def spreadsheet(tables: Sequence[DataTable], made_at: datetime, title: str = "Cows and feet") -> bytes:
    """The workbook; `made_at` is the only moment in it."""
    book = Workbook(write_only=True)
    book.properties.title = title
    book.properties.creator = "trimops"
    sheets = [book.create_sheet(table.name[:31]) for table in tables]
    for sheet, table in zip(sheets, tables, strict=True):
        _set_up(sheet, table)
    looks = _looks_of(sheets[0])
    out = io.BytesIO()
    book.save(out)
    return packed(_filled(out.getvalue(), tables, looks, made_at))


def _set_up(sheet: WriteOnlyWorksheet, table: DataTable) -> None:
    for number, width in enumerate(_widths(table), start=1):
        sheet.column_dimensions[get_column_letter(number)].width = width  # type: ignore[attr-defined]
    sheet.freeze_panes = "A2"
    all_cells = f"A1:{get_column_letter(len(table.headings))}{len(table.rows) + 1}"
    sheet.auto_filter.ref = all_cells  # type: ignore[attr-defined]
    sheet.append([_head(sheet, heading) for heading in table.headings])


def _head(sheet: WriteOnlyWorksheet, heading: str) -> Cell:
    cell = WriteOnlyCell(sheet, heading)
    cell.font, cell.fill, cell.alignment = _HEAD, _HEAD_FILL, _WRAP
    return cell


def _widths(table: DataTable) -> list[int]:
    seen_rows = table.rows[:LOOKED_AT]
    columns = zip(*seen_rows, strict=True) if seen_rows else [()] * len(table.headings)
    longest = [
        max([len(heading), *(len(str(cell or "")) for cell in column)])
        for heading, column in zip(table.headings, columns, strict=True)
    ]
    return [min(_WIDE, max(_NARROW, seen + 2)) for seen in longest]


def _looks_of(sheet: WriteOnlyWorksheet) -> _Looks:
    day, text = WriteOnlyCell(sheet), WriteOnlyCell(sheet)
    day.number_format, text.quotePrefix = "yyyy-mm-dd", True
    return _Looks(day.style_id, text.style_id)


def _filled(
    book: bytes, tables: Sequence[DataTable], looks: _Looks, made_at: datetime
) -> Iterator[tuple[str, bytes]]:
    """The parts of the workbook with the rows in, and without the moments that the library put in."""
    rows = {f"xl/worksheets/sheet{number}.xml": table.rows for number, table in enumerate(tables, start=1)}
    moment = f"{made_at:%Y-%m-%dT%H:%M:%SZ}".encode()
    stamp = rb"\g<1>" + moment
    with zipfile.ZipFile(io.BytesIO(book)) as parts:
        for name in parts.namelist():
            part = parts.read(name)
            if name in rows:
                lines = enumerate(rows[name], start=2)
                below = "".join(_row(number, row, looks) for number, row in lines).encode()
                part = part.replace(_END_OF_ROWS, below + _END_OF_ROWS)
            yield name, _CHANGED.sub(stamp, part) if name == "docProps/core.xml" else part


def _row(number: int, row: Sequence[Value], looks: _Looks) -> str:
    cells = [
        _cell(f"{_column(place)}{number}", value, looks)
        for place, value in enumerate(row, start=1)
        if value is not None and value != ""
    ]
    return f'<row r="{number}">{"".join(cells)}</row>'


@lru_cache(10_000)
def _text(value: str, looks: _Looks) -> str:
    """Of a cell's tag all but its place: the same words come by the thousand."""
    look = f' s="{looks.text}"' if value.startswith(("=", "+", "-", "@")) else ""
    text = escape(NOT_IN_XML.sub("", value)[:_LONGEST], {"\r": "&#13;"})
    return f't="inlineStr"{look}><is><t xml:space="preserve">{text}</t></is>'


def _cell(place: str, value: Value, looks: _Looks) -> str:
    if isinstance(value, str):
        return f'<c r="{place}" {_text(value, looks)}</c>'
    if isinstance(value, date):
        return f'<c r="{place}" s="{looks.day}"><v>{(value - _DAY_NOUGHT).days}</v></c>'
    return f'<c r="{place}"><v>{value}</v></c>'
