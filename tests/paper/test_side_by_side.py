from datetime import UTC, datetime
from io import BytesIO

from pypdf import PdfReader
from reportlab.platypus import Table

from trimops.paper.colours import Meaning
from trimops.paper.headings import SignedHeading, section
from trimops.paper.sheet import TEXT_WIDTH, SheetInfo, build_sheet
from trimops.paper.side_by_side import side_by_side
from trimops.paper.styles import words

INFO = SheetInfo("t", "a", "s", datetime(2026, 12, 1, tzinfo=UTC), "f")


def column(lines):
    return [SignedHeading("For the vet", Meaning.URGENT), *[words(f"line {i}") for i in range(lines)]]


def test_short_columns_stand_beside_each_other():
    assert [type(part) for part in side_by_side([column(3), column(2)], TEXT_WIDTH)] == [Table]


def test_a_long_column_runs_over_the_page_instead_of_failing():
    parts = side_by_side([column(120), column(2)], TEXT_WIDTH)
    text = " ".join(page.extract_text() for page in PdfReader(BytesIO(build_sheet(parts, INFO))).pages)
    assert "line 119" in text
    assert text.count("For the vet") == 2


def test_a_section_does_not_leave_its_heading_alone_at_the_foot():
    story = [*[words(f"line {i}") for i in range(54)], *section("Next", 110), words("after")]
    pages = [page.extract_text() for page in PdfReader(BytesIO(build_sheet(story, INFO))).pages]
    assert [("Next" in page, "after" in page) for page in pages] == [(False, False), (True, True)]
