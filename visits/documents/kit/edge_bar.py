"""What is left on one edge: cows behind it as a bar, those to come as a line with its doubt.

The bar is what the edge has cut. From its end a thick line runs to where the edge is counted on, a thin one over the
80 % interval, and a dot stands where half of such edges are dull. A dull edge is hatched. A stroke below is ten cows.
All of a list are drawn to one scale, `longest` cows long; the words beside say the same.
"""

from dataclasses import dataclass

from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Drawing, Line, Pen, Polygon, Shape, box
from trimops.paper.hatching import hatch
from visits.documents.herd.axis import Scale

_HEIGHT, _MIDDLE, _FOOT = 6.4, 2.6, 4.8
_EDGE, _BAR = 1.0, 3.2
_STROKES = 10


@dataclass(frozen=True)
class EdgeBar:
    """Cows behind the edge, and those to come: counted on, and the interval; `has_interval` False: a figure set by the
    business has none."""

    cows: int
    sure: int = 0
    low: int = 0
    middle: int = 0
    high: int = 0
    is_dull: bool = False
    has_interval: bool = True

    @property
    def end(self) -> int:
        """How far it reaches."""
        return self.cows + (0 if self.is_dull else max(self.sure, self.high))


def edge_bar(bar: EdgeBar, longest: int, words: str, width: float = 56.0) -> Drawing:
    """The bar `width` mm across; `words` are read out in its place."""
    scale = Scale(0, max(longest, _STROKES), _EDGE, width - 2)
    end = scale.at(bar.cows)
    shapes = [*_ground(scale), *_behind(bar, end), *([] if bar.is_dull else _to_come(bar, end, scale))]
    return Drawing(width, _HEIGHT, tuple(shapes), words)


def _ground(scale: Scale) -> list[Shape]:
    pen = Pen(Tint.QUIET, 0.25)
    base = Line(((scale.start, _FOOT), (scale.end, _FOOT)), pen)
    places = [scale.at(cows) for cows in range(0, int(scale.high) + 1, _STROKES)]
    return [base, *(Line(((x, _FOOT), (x, _FOOT + 1.2)), pen) for x in places)]


def _behind(bar: EdgeBar, end: float) -> list[Shape]:
    if not bar.cows:
        return []
    corners = box(_EDGE, _MIDDLE - _BAR / 2, end, _MIDDLE + _BAR / 2)
    if bar.is_dull:
        ground = Polygon(corners, Tint.PAPER, Pen(Tint.DUE, 0.4))
        return [ground, *hatch(corners, 1.2, Pen(Tint.DUE, 0.4))]
    return [Polygon(corners, Tint.GROUND, Pen(Tint.QUIET, 0.35))]


def _to_come(bar: EdgeBar, end: float, scale: Scale) -> list[Shape]:
    shapes: list[Shape] = []
    if bar.sure:
        sure = scale.at(bar.cows + bar.sure)
        shapes.append(Polygon(box(end, _MIDDLE - 0.9, sure, _MIDDLE + 0.9), Tint.DONE, None))
    if bar.has_interval:
        low, half, high = (scale.at(bar.cows + cows) for cows in (bar.low, bar.middle, bar.high))
        shapes.append(Line(((low, _MIDDLE), (high, _MIDDLE)), Pen(Tint.INK, 0.35)))
        shapes += [Line(((x, _MIDDLE - 1), (x, _MIDDLE + 1)), Pen(Tint.INK, 0.35)) for x in (low, high)]
        shapes.append(Circle((half, _MIDDLE), 1.0, Tint.INK, None))
    return shapes
