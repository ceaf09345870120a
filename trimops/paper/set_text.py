"""Text set in lines: paragraphs that do no work twice.

reportlab reads every paragraph with its markup parser and breaks its lines anew each time it is measured (a cell of a
table three times). Plain words need no parser, and lines broken for a width stay broken for it. What is drawn is the
same.
"""

import re
from collections.abc import Iterable
from functools import lru_cache

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Paragraph
from reportlab.platypus.paraparser import ParaFrag

from trimops.paper.typefaces import BOLD, runs_of
from trimops.paper.wording import clean, markup

_SPACES = re.compile(r"[ \t]+")


class SetText(Paragraph):
    """A paragraph that breaks its lines once for each width."""

    _broken_for: float | None = None

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        # Splitting a paragraph over a page throws its lines away.
        if self._broken_for != available_width or not hasattr(self, "blPara"):
            super().wrap(available_width, available_height)
            self._broken_for = available_width
        return self.width, self.height


def set_text(pieces: Iterable[tuple[str, bool]], style: ParagraphStyle) -> SetText:
    """A paragraph of plain pieces, each bold or in the style's own face; nothing in them is read as markup."""
    told = [(clean(text), BOLD if is_bold else style.fontName) for text, is_bold in pieces if text]
    if not told or any("\n" in text for text, _ in told):
        return SetText("".join(_marked(text, face, style) for text, face in told), style)
    told[0] = (told[0][0].lstrip(), told[0][1])
    told[-1] = (told[-1][0].rstrip(), told[-1][1])
    like = _fragment_of(style)
    fragments = [
        like.clone(fontName=name, text=_SPACES.sub(" ", run))
        for text, face in told
        for name, run in runs_of(text, face)
    ]
    return SetText("", style, frags=fragments)


@lru_cache(maxsize=256)
def _fragment_of(style: ParagraphStyle) -> ParaFrag:
    """What the parser makes of a letter in that style."""
    (fragment,) = Paragraph("x", style).frags
    return fragment


def _marked(text: str, face: str, style: ParagraphStyle) -> str:
    inner = markup(text, face)
    return inner if face == style.fontName else f'<font name="{face}">{inner}</font>'
