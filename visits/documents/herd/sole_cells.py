"""The sole as a map of cells, each large enough for a number: the map the trimmer taps on at the crush, on paper.

A foot from below, toes up, walls folded out. A place's cell is all of the claw (or the skin) that is nearer to its
middle than to any other. The figures are those of `visits/static/visits/crush/sole_map.js`; a test holds them equal.
Place numbers: the map of the International Lameness Committee (Kuopio 2008).
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, reduce
from typing import Final

from trimops.paper.drawing import Point
from visits.domain.feet import Claw, Foot

LEFT: Final = -182.0
WIDTH: Final = 364.0
HEIGHT: Final = 404.0

ON_CLAW: Final[dict[int, Point]] = {
    1: (80, 36),
    8: (139, 61),
    2: (152, 119),
    7: (152, 187),
    3: (152.5, 265),
    4: (106, 232),
    5: (101, 150),
    6: (96, 306),
    11: (57, 98),
    12: (57, 202),
}
"""Middles of the places of the claw on the right of the drawing; the other claw is its mirror."""

ON_SKIN: Final[dict[int, Point]] = {0: (0, 130), 10: (0, 285), 9: (0, 372)}

CLAW_EDGE: Final[tuple[Point, ...]] = (
    (28.5, 44), (34, 26), (48, 13), (66, 7), (86, 6), (106, 11), (128, 22), (150, 31), (166, 46), (176, 66),
    (180.5, 92), (181, 140), (181, 185), (181, 240), (181, 275), (174, 303), (160, 322), (140, 334), (112, 339),
    (86, 338), (62, 329), (44, 312), (34, 290), (28.5, 262),
)  # fmt: skip
"""The outline of the claw on the right of the drawing."""

_HEEL: Final[tuple[Point, ...]] = ((28.5, 60), *reversed(CLAW_EDGE[18:]), (128, 352), (118, 384), (90, 401))
_SKIN_EDGE: Final[tuple[Point, ...]] = (*_HEEL, *((-x, y) for x, y in reversed(_HEEL)))


@dataclass(frozen=True)
class Cell:
    """One place of a foot: its claw, its zone, the middle and the corners of its cell."""

    claw: Claw
    zone: int
    middle: Point
    corners: tuple[Point, ...]


def side_of(foot: Foot, claw: Claw) -> int:
    """-1 when that claw is drawn on the left, 1 on the right, 0 for the skin: a right foot's outer claw is left."""
    if claw is Claw.SKIN:
        return 0
    outer = -1 if foot in (Foot.RIGHT_FORE, Foot.RIGHT_HIND) else 1
    return outer if claw is Claw.LATERAL else -outer


@cache
def cells_of(foot: Foot) -> tuple[Cell, ...]:
    """Every place of a foot, skin first, as it is drawn."""
    cells = [Cell(Claw.SKIN, zone, ON_SKIN[zone], corners) for zone, corners in _cells(ON_SKIN, _SKIN_EDGE)]
    for zone, corners in _cells(ON_CLAW, CLAW_EDGE):
        for claw in (Claw.LATERAL, Claw.MEDIAL):
            side = side_of(foot, claw)
            x, y = ON_CLAW[zone]
            cells.append(Cell(claw, zone, (side * x, y), tuple((side * x, y) for x, y in corners)))
    return tuple(cells)


def _cells(middles: Mapping[int, Point], edge: Sequence[Point]) -> list[tuple[int, tuple[Point, ...]]]:
    found = []
    for zone, middle in middles.items():
        others = [other for other in middles.values() if other != middle]
        corners = reduce(lambda polygon, other: _nearer(middle, other, polygon), others, tuple(edge))
        found.append((zone, corners))
    return found


def _nearer(here: Point, other: Point, polygon: tuple[Point, ...]) -> tuple[Point, ...]:
    """The part of the polygon nearer to `here` than to `other`: cut along the line midway between them."""
    across, down = here[0] - other[0], here[1] - other[1]
    middle = ((here[0] + other[0]) / 2, (here[1] + other[1]) / 2)

    def depth(point: Point) -> float:
        return (point[0] - middle[0]) * across + (point[1] - middle[1]) * down

    kept: list[Point] = []
    for before, point in zip((polygon[-1], *polygon[:-1]), polygon, strict=True):
        a, b = depth(before), depth(point)
        if a * b < 0:
            part = a / (a - b)
            kept.append(
                (before[0] + (point[0] - before[0]) * part, before[1] + (point[1] - before[1]) * part)
            )
        if b >= 0:
            kept.append(point)
    return tuple(kept)
