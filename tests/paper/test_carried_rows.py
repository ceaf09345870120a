from datetime import UTC, datetime
from io import BytesIO

import pytest
from pypdf import PdfReader
from reportlab.platypus import Spacer

from trimops.paper.carried_rows import FORWARD, OVER, CarriedRow, CarriedRows
from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.styles import words
from trimops.paper.tables import Column, ruled_table

INFO = SheetInfo("t", "a", "s", datetime(2026, 12, 1, tzinfo=UTC), "f")
COLUMNS = (Column("What", 200), Column("Net", 80, "right"))


def draw(rows):
    return ruled_table(COLUMNS, [[*row.cells, *([""] * (2 - len(row.cells)))] for row in rows])


def told(what, amount):
    return CarriedRow((what, amount))


def pages_of(rows, above=0.0):
    pdf = build_sheet([Spacer(0, above), CarriedRows(rows, draw, told)], INFO)
    return [
        [line.strip() for line in page.extract_text().split("\n")] for page in PdfReader(BytesIO(pdf)).pages
    ]


def numbered(count):
    return [CarriedRow((f"row{number}", "1.00"), f"{number + 1}.00") for number in range(count)]


def test_one_page_carries_nothing():
    (page,) = pages_of(numbered(3))
    assert OVER not in page
    assert FORWARD not in page


@pytest.mark.parametrize("above", [0.0, 300.0, 701.0])
def test_each_page_takes_up_what_the_last_one_carried_over(above):
    pages = pages_of(numbered(100), above)
    shown = [sum(line.startswith("row") for line in page) for page in pages]
    assert sum(shown) == 100
    so_far = 0
    for number, (page, count) in enumerate(zip(pages, shown, strict=True)):
        if so_far:
            assert page[page.index(FORWARD) + 1] == f"{so_far}.00"
            assert page[:2] == ["What", "Net"]
        so_far += count
        if number < len(pages) - 1 and count:
            assert page[page.index(OVER) + 1] == f"{so_far}.00"
    assert OVER not in pages[-1]


@pytest.mark.parametrize("lead_at", range(40, 46))
def test_a_heading_never_stands_last_on_a_page(lead_at):
    rows = numbered(60)
    rows.insert(lead_at, CarriedRow(("heading",), leads=True))
    page = next(page for page in pages_of(rows) if "heading" in page)
    assert page[page.index("heading") + 1] == f"row{lead_at}"


def test_a_row_taller_than_a_page_runs_on():
    rows = [CarriedRow(([words(f"line{number}") for number in range(150)], "1.00"), "1.00"), *numbered(2)]
    text = [line for page in pages_of(rows) for line in page]
    assert all(f"line{number}" in text for number in range(150))
    assert "row1" in text
