"""Shades of one ink: closer and thicker slanting lines for more, so that a photocopy still tells them apart."""

import math
from collections.abc import Sequence

from trimops.paper.colours import Tint
from trimops.paper.drawing import Pen, Point, Polygon, Shape
from trimops.paper.hatching import hatch

DARKEST = 4
_OUTLINE = Pen(Tint.QUIET, 0.2)
_LINES = {1: (1.5, 0.14), 2: (0.9, 0.28), 3: (0.75, 0.48)}


def shade_of(count: int, highest: int) -> int:
    """0 for none, else 1 to 4 by quarters of the highest count, and never darker than the count itself."""
    return math.ceil(DARKEST * count / max(highest, DARKEST)) if count else 0


def shade_ranges(highest: int) -> tuple[tuple[int, int, int], ...]:
    """(shade, least, most) of every shade that a count up to `highest` can have."""
    counts: dict[int, list[int]] = {}
    for count in range(1, highest + 1):
        counts.setdefault(shade_of(count, highest), []).append(count)
    return tuple((shade, within[0], within[-1]) for shade, within in counts.items())


def shaded(corners: Sequence[Point], shade: int) -> list[Shape]:
    """The shape in that shade, with a thin outline."""
    if shade == DARKEST:
        return [Polygon(tuple(corners), Tint.INK, _OUTLINE)]
    ground = Polygon(tuple(corners), Tint.PAPER, _OUTLINE)
    if not shade:
        return [ground]
    spacing, width = _LINES[shade]
    return [ground, *hatch(corners, spacing, Pen(Tint.INK, width))]
