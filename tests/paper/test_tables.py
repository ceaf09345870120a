from datetime import UTC, datetime
from io import BytesIO

from pypdf import PdfReader

from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.tables import Column, ruled_table

INFO = SheetInfo("t", "a", "s", datetime(2026, 12, 1, tzinfo=UTC), "f")
COLUMNS = (Column("Cow", 60), Column("Count", 80, "right"))


def pages_of(rows, groups=()):
    pdf = build_sheet([ruled_table(COLUMNS, rows, groups=groups)], INFO)
    return [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]


def test_the_head_is_repeated_on_every_page():
    pages = pages_of([[f"row{i}", str(i)] for i in range(120)])
    assert len(pages) > 1
    assert all("Count" in page for page in pages)


def test_rows_that_belong_together_stay_on_one_page():
    rows = [[f"cow{i // 7}-{i % 7}", ""] for i in range(140)]
    groups = [(i, i + 6) for i in range(0, 140, 7)]
    pages = pages_of(rows, groups)
    assert len(pages) > 1
    for cow in range(20):
        holding = [page for page in pages if f"cow{cow}-" in page]
        assert len(holding) == 1, cow
        assert all(f"cow{cow}-{foot}" in holding[0] for foot in range(7))
