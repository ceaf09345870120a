"""Cows per edge as a line of steps with its interval as a band, the line of a wider group beside it.

Under it stands how many edges got so far: where few did, the line says little.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from trimops.paper.colours import Tint
from trimops.paper.drawing import Drawing, Line, Pen, Point, Polygon, Shape, Text
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale, tick_words, ticks
from visits.documents.herd.marks import WORDS, centred
from visits.documents.herd.plot import Plot, plot
from visits.documents.herd.stairs import stairs

_HEIGHT = 40.0
_UNIT = "of 100 edges, still sharp"
_HALF = Pen(Tint.INK, 0.3, (1.2, 0.9))
_WIDER = Pen(Tint.PLANNED, 0.45, (2.0, 1.0))


@dataclass(frozen=True)
class CurvePoint:
    """From `cows` on, `share` of 100 edges were still sharp; its interval."""

    cows: float
    share: float
    low: float
    high: float


@dataclass(frozen=True)
class EdgeCurveContent:
    """`points` in order of cows, the first at 0 with 100; `last`: as far as any edge went; `got_there`: (cows, edges
    that got so far). `wider` is the curve of all of the kind, `wider_words` its name; `now`: cows on the edge looked
    at.
    """

    points: tuple[CurvePoint, ...]
    last: float
    got_there: tuple[tuple[int, int], ...]
    words: str
    half_by: float | None = None
    wider: tuple[CurvePoint, ...] = ()
    wider_last: float = 0
    wider_words: str = ""
    now: int | None = None

    @property
    def is_empty(self) -> bool:
        return len(self.points) < 2 or self.last <= 0


def edge_curve_drawing(content: EdgeCurveContent, width: float = 86.0) -> Drawing:
    """The picture `width` mm across. ValueError where no edge went dull."""
    if content.is_empty:
        raise ValueError("no edge to draw")
    ground = plot(_UNIT, (0, 25, 50, 75, 100), width, _HEIGHT)
    longest = max(content.last, content.wider_last, content.now or 0)
    cows = Scale(0, longest, ground.left, ground.right - 3)
    shapes = [*_band(content, ground, cows), *ground.shapes]
    if content.wider:
        shapes.append(Line(_run(content.wider, content.wider_last, ground, cows), _WIDER))
    shapes.append(Line(_run(content.points, content.last, ground, cows), Pen(Tint.INK, 0.6)))
    shapes += [*_half(content, ground, cows), *_now(content, ground, cows)]
    below, end = _below(content, ground, cows)
    return Drawing(width, end, (*shapes, *below), f"Cows per edge: {content.words}", _told(content))


def _run(points: Sequence[CurvePoint], last: float, ground: Plot, cows: Scale) -> tuple[Point, ...]:
    return _stairs(points, lambda point: point.share, last, ground, cows)


def _stairs(
    points: Sequence[CurvePoint],
    value: Callable[[CurvePoint], float],
    last: float,
    ground: Plot,
    cows: Scale,
) -> tuple[Point, ...]:
    return stairs([(cows.at(point.cows), ground.scale.at(value(point))) for point in points], cows.at(last))


def _band(content: EdgeCurveContent, ground: Plot, cows: Scale) -> list[Shape]:
    upper = _stairs(content.points, lambda point: point.high, content.last, ground, cows)
    lower = _stairs(content.points, lambda point: point.low, content.last, ground, cows)
    return [Polygon((*upper, *reversed(lower)), Tint.GROUND, Pen(Tint.RULE, 0.25))]


def _half(content: EdgeCurveContent, ground: Plot, cows: Scale) -> list[Shape]:
    """Where the line comes down to half, if it does."""
    if content.half_by is None:
        return []
    x, y = cows.at(content.half_by), ground.scale.at(50)
    words = f"half by {content.half_by:g}"
    return [
        Line(((ground.left, y), (x, y), (x, ground.foot)), _HALF),
        Text((x + 1.5, y - 1.5), words, WORDS, bold=True)
        if x + width_of(words, BODY, WORDS) + 3 <= ground.right
        else Text((x - 1.5, ground.foot - 1.5), words, WORDS, bold=True, anchor="end"),
    ]


def _now(content: EdgeCurveContent, ground: Plot, cows: Scale) -> list[Shape]:
    """The edge on the blade: a mark on the axis."""
    if content.now is None:
        return []
    x = cows.at(content.now)
    foot = ground.foot
    mark = ((x, foot), (x - 1.4, foot + 2.2), (x + 1.4, foot + 2.2))
    return [Polygon(mark, Tint.PLANNED, None)]


def _below(content: EdgeCurveContent, ground: Plot, cows: Scale) -> tuple[list[Shape], float]:
    """The cows, and under each how many edges got so far; what the lines are."""
    shapes: list[Shape] = []
    for tick in ticks(cows.high):
        if tick <= cows.high:
            x = cows.at(tick)
            shapes.append(Line(((x, ground.foot), (x, ground.foot + 1.2)), Pen(Tint.INK, 0.35)))
            shapes.append(centred((x, ground.foot + 6.0), tick_words(tick)))
    foot = ground.foot + 11.2
    shapes.append(Text((ground.left, foot), "cows since it was sharpened", WORDS, tint=Tint.QUIET))
    if content.got_there:
        foot += 5.8
        shapes.append(Text((ground.left, foot), "edges that got so far:", WORDS))
        foot += 5.0
        shapes += [
            Text((cows.at(at), foot), f"{edges:,}", WORDS, anchor="middle") for at, edges in content.got_there
        ]
    key = [(Pen(Tint.INK, 0.6), content.words)]
    if content.wider:
        key.append((_WIDER, content.wider_words))
    for pen, words in key:
        foot += 5.6
        shapes.append(Line(((ground.left, foot - 1.3), (ground.left + 8, foot - 1.3)), pen))
        shapes.append(Text((ground.left + 10, foot), words, WORDS))
    if content.now is not None:
        foot += 5.6
        x = ground.left + 4
        shapes.append(
            Polygon(((x, foot - 2.6), (x - 1.4, foot - 0.4), (x + 1.4, foot - 0.4)), Tint.PLANNED, None)
        )
        shapes.append(Text((ground.left + 10, foot), f"this edge now: {content.now}", WORDS))
    return shapes, foot + 1.6


def _told(content: EdgeCurveContent) -> str:
    half = "" if content.half_by is None else f"half were dull by {content.half_by:g} cows; "
    last = content.points[-1]
    so_far = ", ".join(f"{edges} got to {cows}" for cows, edges in content.got_there)
    return (
        f"{half}at {content.last:g} cows {last.share:.0f} of 100 were still sharp "
        f"({last.low:.0f} to {last.high:.0f}){f'; of the edges {so_far}' if so_far else ''}"
    )
