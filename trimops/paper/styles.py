"""Paragraph styles: one scale of sizes (points), ink on paper."""

from functools import cache
from typing import Final, Literal

from reportlab.lib.colors import HexColor
from reportlab.lib.enums import TA_CENTER, TA_LEFT, TA_RIGHT
from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph

from trimops.paper.colours import HEX, Tint
from trimops.paper.set_text import set_text
from trimops.paper.typefaces import BODY, BOLD, register_typefaces

Align = Literal["left", "right", "centre"]
_ALIGN: Final[dict[Align, Literal[0, 1, 2]]] = {"left": TA_LEFT, "right": TA_RIGHT, "centre": TA_CENTER}

SMALL: Final = 8.0
TEXT: Final = 9.5
LEAD: Final = 12.0
HEAD: Final = 13.0
TITLE: Final = 18.0
SPACE: Final = (0, 4, 8, 12, 16, 24, 40)


@cache
def style(
    size: float = TEXT,
    *,
    bold: bool = False,
    tint: Tint = Tint.INK,
    align: Align = "left",
    before: float = 0,
    after: float = 0,
    right: float = 0,
) -> ParagraphStyle:
    """A paragraph style of that size in points; long words break rather than run off the page."""
    register_typefaces()
    face = BOLD if bold else BODY
    return ParagraphStyle(
        f"{face}-{size}-{tint}-{align}-{before}-{after}-{right}",
        fontName=face,
        fontSize=size,
        leading=size * (1.15 if size >= TITLE else 1.3),
        textColor=HexColor(HEX[tint]),
        alignment=_ALIGN[align],
        spaceBefore=before,
        spaceAfter=after,
        rightIndent=right,
        splitLongWords=1,
        allowWidows=0,
        allowOrphans=0,
    )


def words(text: str, using: ParagraphStyle | None = None) -> Paragraph:
    """A paragraph of plain text: nothing in it is read as markup."""
    return set_text([(text, False)], using or style())


def lead_words(lead: str, text: str, using: ParagraphStyle | None = None) -> Paragraph:
    """A paragraph whose first words are bold."""
    return set_text([(lead, True), (" " if lead and text else "", False), (text, False)], using or style())
