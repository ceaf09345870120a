"""How wide the bevel of a knife is, from the thickness of its steel and the angle of its edge.

For an edge ground on one side, the bevel is the long side of a right triangle with the thickness opposite the angle:
width = thickness / sin(angle). Published rule of thumb: a bevel 4, 3 or 2 times as wide as the steel is thick is an
edge of about 15, 20 or 30 degrees (T. Jubb 2010, slides on sharpening hoof knives); the arc sine gives 14.5, 19.5 and
30.0 and the arc tangent 14.0, 18.4 and 26.6, so the sine it is. Units: mm, degrees.
"""

import math
from dataclasses import dataclass

THINNEST, THICKEST = 0.2, 20
FLATTEST, STEEPEST = 5, 60


@dataclass(frozen=True)
class BevelLine:
    """One line of the table: the edge angle, and how wide the bevel is, in mm and in thicknesses of the steel."""

    angle: float
    width: float
    times: float


def bevel_width(thickness: float, angle: float) -> float:
    """The width of the bevel in mm. ValueError outside 0.2 to 20 mm and 5 to 60 degrees."""
    _check(thickness, angle)
    return thickness / math.sin(math.radians(angle))


def bevel_table(thickness: float, angles: tuple[float, ...] = (15, 20, 25, 30)) -> tuple[BevelLine, ...]:
    """The usual angles for steel of that thickness."""
    widths = [(angle, bevel_width(thickness, angle)) for angle in angles]
    return tuple(BevelLine(angle, width, width / thickness) for angle, width in widths)


def _check(thickness: float, angle: float) -> None:
    if not THINNEST <= thickness <= THICKEST:
        raise ValueError(f"The steel is from {THINNEST:g} to {THICKEST:g} mm thick.")
    if not FLATTEST <= angle <= STEEPEST:
        raise ValueError(f"The edge angle is from {FLATTEST:g} to {STEEPEST:g} degrees.")
