"""The same drawing on paper: rendered by pypdfium2 and looked at pixel by pixel."""

from datetime import UTC, datetime

import pypdfium2
import pytest
from reportlab.lib.units import mm

from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Curve, Drawing, Line, Pen, Polygon, Text, box
from trimops.paper.sheet import MARGIN, SheetInfo, build_sheet
from trimops.paper.to_pdf import DrawingBlock

INFO = SheetInfo("t", "a", "s", datetime(2026, 12, 1, tzinfo=UTC), "f")
DRAWING = Drawing(
    60,
    40,
    (
        Polygon(box(0, 0, 10, 10), Tint.URGENT, None),
        Polygon(box(50, 30, 60, 40), Tint.PLANNED, None),
        Line(((20, 20), (40, 20)), Pen(Tint.INK, 2)),
        Circle((30, 5), 3, Tint.DONE, None),
        Curve((20, 30), (((25, 30), (35, 30), (40, 30)),), pen=Pen(Tint.DUE, 2)),
        Text((20, 38), "ŴŴ", 4, anchor="middle"),
    ),
    title="t",
)


def pixel(x_mm: float, y_mm: float) -> tuple[int, ...]:
    """The colour at a point of the drawing, which lies at the top left of the text area."""
    picture = pypdfium2.PdfDocument(build_sheet([DrawingBlock(DRAWING)], INFO))[0].render(scale=4)
    row, column = int((MARGIN + y_mm * mm) * 4), int((MARGIN + x_mm * mm) * 4)
    start = row * picture.stride + column * picture.n_channels
    return tuple(bytes(picture.buffer)[start : start + 3])[::-1]


def test_y_runs_downwards_on_paper_as_on_the_page():
    assert pixel(5, 5) == (0xA8, 0x20, 0x1A)
    assert pixel(55, 35) == (0x1D, 0x4F, 0x91)


def test_lines_rings_and_curves_come_where_they_were_drawn():
    assert pixel(30, 20) == (0x1B, 0x1A, 0x17)
    assert pixel(30, 5) == (0x1F, 0x6F, 0x43)
    assert pixel(30, 30) == (0x9A, 0x5B, 0x00)
    assert pixel(45, 5) == (255, 255, 255)


def test_words_are_centred_on_their_anchor():
    text = pypdfium2.PdfDocument(build_sheet([DrawingBlock(DRAWING)], INFO))[0].get_textpage()
    boxes = [text.get_rect(i) for i in range(text.count_rects())]
    left, _, right, _ = next(box for box in boxes if "Ŵ" in text.get_text_bounded(*box))
    assert (left + right) / 2 == pytest.approx(MARGIN + 20 * mm, abs=1.5 * mm)
