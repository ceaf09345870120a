"""The band of a day's ribbon, the same whether time runs across or down: only `place` tells the two apart."""

from collections.abc import Callable

from trimops.paper.colours import Tint, tint_of
from trimops.paper.drawing import Line, Pen, Point, Polygon, Shape
from trimops.paper.hatching import hatch
from visits.documents.day_ribbon_content import DayRibbon, TimeScale

Place = Callable[[float, float], Point]
_THIN = Pen(Tint.RULE, 0.2)
_HATCH = Pen(Tint.QUIET, 0.2)


def band_shapes(day: DayRibbon, scale: TimeScale, place: Place, lane: tuple[float, float]) -> list[Shape]:
    """Hours, drives, visits, meal and milkings. `place(along, across)` gives the point; `lane` is the band's
    first and last coordinate across time."""
    near, far = lane
    middle = (near + far) / 2
    shapes: list[Shape] = [
        Line((place(along, near - 1.5), place(along, far + 1.5)), _THIN) for _, along in scale.hours()
    ]
    for start, end in day.milkings():
        corners = _corners(place, (scale.at(start), scale.at(end)), (far + 1.2, far + 4.2))
        shapes += hatch(corners, 0.9, _HATCH)
        shapes.append(Polygon(corners, None, _HATCH))
    for drive in day.drives:
        ends = (place(scale.at(drive.leave), middle), place(scale.at(drive.arrive), middle))
        shapes.append(Line(ends, Pen(Tint.INK, 0.5)))
    for visit in day.visits:
        corners = _corners(place, (scale.at(visit.start), scale.at(visit.finish)), lane)
        shapes.append(Polygon(corners, Tint.GROUND, Pen(tint_of(visit.meaning), 0.6)))
    if day.meal:
        for instant in day.meal:
            along = scale.at(instant)
            shapes.append(
                Line((place(along, near + 1.5), place(along, far - 1.5)), Pen(Tint.QUIET, 0.3, (0.8, 0.8)))
            )
    return shapes


def _corners(place: Place, along: tuple[float, float], across: tuple[float, float]) -> tuple[Point, ...]:
    (start, end), (near, far) = along, across
    return place(start, near), place(end, near), place(end, far), place(start, far)
