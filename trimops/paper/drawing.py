"""A drawing as plain values, in millimetres, y downwards from the top left.

One drawing feeds both the page (`to_svg`) and the paper (`to_pdf`), so the two cannot differ.
"""

from dataclasses import dataclass
from typing import Literal

from trimops.paper.colours import Tint

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True)
class Pen:
    """How a line is drawn: colour, width in mm, and dash lengths in mm (none = a whole line)."""

    tint: Tint = Tint.INK
    width: float = 0.3
    dashes: tuple[float, ...] = ()


@dataclass(frozen=True)
class Line:
    """An open run of straight pieces through `points`."""

    points: tuple[Point, ...]
    pen: Pen = Pen()


@dataclass(frozen=True)
class Polygon:
    """A closed shape with straight sides."""

    points: tuple[Point, ...]
    fill: Tint | None = None
    pen: Pen | None = Pen()


@dataclass(frozen=True)
class Curve:
    """A run of cubic Bézier pieces from `start`; each piece is (handle, handle, end)."""

    start: Point
    pieces: tuple[tuple[Point, Point, Point], ...]
    closed: bool = False
    fill: Tint | None = None
    pen: Pen | None = Pen()


@dataclass(frozen=True)
class Circle:
    """A circle about `centre`."""

    centre: Point
    radius: float
    fill: Tint | None = None
    pen: Pen | None = Pen()


@dataclass(frozen=True)
class Text:
    """One line of words; `at` is the end of the baseline named by `anchor`, `size` in mm."""

    at: Point
    words: str
    size: float = 3.0
    bold: bool = False
    tint: Tint = Tint.INK
    anchor: Anchor = "start"


Shape = Line | Polygon | Curve | Circle | Text


@dataclass(frozen=True)
class Drawing:
    """Shapes on a sheet of `width` x `height` mm. `title` and `description` are read out by screen readers."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    title: str
    description: str = ""


def box(left: float, top: float, right: float, bottom: float) -> tuple[Point, ...]:
    """The corners of an upright rectangle."""
    return ((left, top), (right, top), (right, bottom), (left, bottom))
