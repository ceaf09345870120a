"""Marks of the herd pictures: a figure as a mark, its interval as a line through it; told apart without colour."""

from typing import Literal

from trimops.paper.colours import Tint
from trimops.paper.drawing import Circle, Line, Pen, Point, Polygon, Shape, Text, box
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.axis import Scale
from visits.documents.herd_story_content import Reading

Kind = Literal["dot", "ring", "square", "diamond"]
WORDS = 4.0
_BAR = Pen(Tint.INK, 0.35)
_THIN = Pen(Tint.QUIET, 0.25, (0.9, 0.7))
_ARROW = 0.9


def mark(kind: Kind, centre: Point, radius: float = 1.2) -> Shape:
    """A full dot (the herd), an empty ring (picked cows), an empty square, an empty diamond (in print)."""
    x, y = centre
    if kind == "dot":
        return Circle(centre, radius, Tint.INK, None)
    if kind == "ring":
        return Circle(centre, radius, Tint.PAPER, Pen(Tint.INK, 0.35))
    if kind == "square":
        half = radius * 0.92
        return Polygon(box(x - half, y - half, x + half, y + half), Tint.PAPER, Pen(Tint.INK, 0.4))
    half = radius * 1.3
    return Polygon(
        ((x, y - half), (x + half, y), (x, y + half), (x - half, y)), Tint.PAPER, Pen(Tint.INK, 0.4)
    )


def standing(kind: Kind, x: float, scale: Scale, reading: Reading, radius: float = 1.2) -> list[Shape]:
    """A figure over its place with its interval upright; an arrow where the interval goes on beyond the scale."""
    return [*_interval(kind, x, scale, reading, lies=False), mark(kind, (x, scale.at(reading.value)), radius)]


def lying(kind: Kind, y: float, scale: Scale, reading: Reading, radius: float = 1.2) -> list[Shape]:
    """A figure in its row with its interval lying; an arrow where the interval goes on beyond the scale."""
    return [*_interval(kind, y, scale, reading, lies=True), mark(kind, (scale.at(reading.value), y), radius)]


def centred(at: Point, words: str, size: float = WORDS) -> Text:
    return Text(at, words, size, tint=Tint.QUIET, anchor="middle")


def centred_within(at: Point, words: str, width: float) -> Text:
    """The words about their place, moved so far in that they stay on a sheet `width` mm wide."""
    half = width_of(words, BODY, WORDS) / 2
    return centred((max(half, min(at[0], width - half)), at[1]), words)


def _interval(kind: Kind, place: float, scale: Scale, reading: Reading, *, lies: bool) -> list[Shape]:
    if reading.low is None or reading.high is None:
        return []
    pen = _THIN if kind == "ring" else _BAR
    near, far = scale.at(reading.low), scale.at(reading.high)
    runs = [((near, place), (far, place))]
    if scale.goes_on(reading.high):
        back = far - _ARROW * (1 if scale.end > scale.start else -1)
        runs += [((back, place - _ARROW), (far, place)), ((back, place + _ARROW), (far, place))]
    return [Line(run if lies else tuple((y, x) for x, y in run), pen) for run in runs]
