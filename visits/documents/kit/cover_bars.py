"""How long a consumable lasts, as a bar along the coming weeks, with a stroke where an order could be here.

A bar that ends before the stroke is hatched: an order would come too late. One that goes on beyond the weeks shown ends
in an arrow. The words beside it say the same; the drawing stands never alone.
"""

from dataclasses import dataclass

from trimops.paper.colours import Tint
from trimops.paper.drawing import Drawing, Line, Pen, Polygon, Shape, box
from trimops.paper.hatching import hatch

WEEK = 7
_HEIGHT, _TOP, _FOOT = 6.4, 1.6, 4.8
_EDGE = 1.0
_ARROW = 1.6


@dataclass(frozen=True)
class Cover:
    """`lasts` days from today; None: beyond the `shown` days. An order sent today is here after `lead` days."""

    lasts: float | None
    lead: int
    shown: int = 28

    @property
    def comes_late(self) -> bool:
        """Whether an order sent today would come after it has run out."""
        return self.lasts is not None and self.lasts < self.lead


def cover_bar(cover: Cover, words: str, width: float = 56.0) -> Drawing:
    """The bar `width` mm across; `words` are read out in its place."""
    step = (width - _EDGE - _ARROW) / cover.shown
    lasts = cover.shown if cover.lasts is None else max(0.0, min(cover.lasts, cover.shown))
    end = _EDGE + lasts * step
    return Drawing(
        width,
        _HEIGHT,
        (*_weeks(cover, step), *_bar(cover, end), *_stroke(cover, step)),
        words,
    )


def _weeks(cover: Cover, step: float) -> list[Shape]:
    base = Line(((_EDGE, _FOOT), (_EDGE + cover.shown * step, _FOOT)), Pen(Tint.QUIET, 0.25))
    pen = Pen(Tint.QUIET, 0.25)
    ticks = [_EDGE + day * step for day in range(0, cover.shown + 1, WEEK)]
    return [base, *(Line(((x, _FOOT), (x, _FOOT + 1.2)), pen) for x in ticks)]


def _bar(cover: Cover, end: float) -> list[Shape]:
    middle = (_TOP + _FOOT) / 2
    if cover.lasts is None:
        body = box(_EDGE, _TOP, end, _FOOT)
        head = ((end, _TOP - 0.8), (end + _ARROW, middle), (end, _FOOT + 0.8))
        return [Polygon(body, Tint.INK, None), Polygon(head, Tint.INK, None)]
    if end < _EDGE + 0.4:
        return [Line(((_EDGE, _TOP - 0.8), (_EDGE, _FOOT)), Pen(Tint.URGENT, 0.8))]
    corners = box(_EDGE, _TOP, end, _FOOT)
    if cover.comes_late:
        ground = Polygon(corners, Tint.PAPER, Pen(Tint.DUE, 0.4))
        return [ground, *hatch(corners, 1.2, Pen(Tint.DUE, 0.4))]
    return [Polygon(corners, Tint.INK, None)]


def _stroke(cover: Cover, step: float) -> list[Shape]:
    """Where an order could be here: over the bar, with paper on both sides so that it shows on a full one."""
    if cover.lead > cover.shown:
        return []
    x = _EDGE + cover.lead * step
    return [
        Line(((x, 0.2), (x, _FOOT)), Pen(Tint.PAPER, 1.4)),
        Line(((x, 0.2), (x, _FOOT)), Pen(Tint.INK, 0.5)),
        Polygon(((x - 0.9, 0), (x + 0.9, 0), (x, 1.3)), Tint.INK, None),
    ]
