from datetime import UTC, datetime
from io import BytesIO

from pypdf import PdfReader

from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.styles import words
from trimops.paper.tables import Column, ruled_table

INFO = SheetInfo("t", "a", "s", datetime(2026, 12, 1, tzinfo=UTC), "f")
COLUMNS = (Column("Cow", 80), Column("Seen", 200))


def pages_of(rows, groups=()):
    pdf = build_sheet([words("above"), ruled_table(COLUMNS, rows, groups=groups)], INFO)
    return [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]


def test_a_group_taller_than_a_page_is_split_between_its_rows():
    pages = pages_of([["cow1", words(f"row{i} " + "seen " * 200)] for i in range(6)], [(0, 5)])
    assert len(pages) > 1
    assert all(any(f"row{i} " in page for page in pages) for i in range(6))


def test_a_row_taller_than_a_page_runs_on():
    pages = pages_of([["cow1", [words(f"line{i}") for i in range(150)]], ["cow2", "after"]])
    text = " ".join(pages)
    assert len(pages) >= 3
    assert all(f"line{i}" in text for i in range(150))
    assert "after" in pages[-1]


def test_the_groups_after_it_stay_whole():
    rows = [
        ["cow1", words("seen " * 900)],
        ["cow1", ""],
        *[[f"cow{2 + i // 3}-{i % 3}", words("x " * 150)] for i in range(30)],
    ]
    groups = [(0, 1), *[(i, i + 2) for i in range(2, 32, 3)]]
    pages = pages_of(rows, groups)
    for cow in range(2, 12):
        holding = [page for page in pages if f"cow{cow}-" in page]
        assert len(holding) == 1
