"""Slanting lines that fill a shape, worked out here so that page and paper show the same ones."""

import math
from collections.abc import Sequence

from trimops.paper.drawing import Line, Pen, Point

_SLANT = 1 / math.sqrt(2)


def hatch(corners: Sequence[Point], spacing: float, pen: Pen) -> tuple[Line, ...]:
    """Lines at 45 degrees, `spacing` mm apart, clipped to the polygon through `corners` (it may be hollowed)."""
    across = [(x + y) * _SLANT for x, y in corners]
    first, last = math.ceil(min(across) / spacing), math.floor(max(across) / spacing)
    lines: list[Line] = []
    for step in range(first, last + 1):
        cuts = sorted(_cuts(corners, (step + 1e-6) * spacing))
        for start, end in zip(cuts[::2], cuts[1::2], strict=False):
            lines.append(Line((_back(step * spacing, start), _back(step * spacing, end)), pen))
    return tuple(lines)


def _cuts(corners: Sequence[Point], level: float) -> list[float]:
    """Where the slanting line at `level` crosses the sides, as distances along that line."""
    found: list[float] = []
    for (x0, y0), (x1, y1) in zip(corners, [*corners[1:], corners[0]], strict=True):
        s0, s1 = (x0 + y0) * _SLANT - level, (x1 + y1) * _SLANT - level
        if (s0 < 0) == (s1 < 0):
            continue
        part = s0 / (s0 - s1)
        x, y = x0 + part * (x1 - x0), y0 + part * (y1 - y0)
        found.append((x - y) * _SLANT)
    return found


def _back(across: float, along: float) -> Point:
    return ((across + along) * _SLANT, (across - along) * _SLANT)
