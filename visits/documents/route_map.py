"""A map of base, farms and routes, drawn from their coordinates alone: nothing is fetched from anywhere.

North is up; see `map_projection` for how degrees become millimetres. Lines are straight from stop to stop: they show
the order, not the roads.
"""

from collections.abc import Iterator
from itertools import pairwise

from trimops.paper.colours import Tint, tint_of
from trimops.paper.drawing import Circle, Drawing, Line, Pen, Point, Polygon, Shape, Text, box
from visits.documents.map_key import SIZE, dashes_of, key_rows, key_shapes, north_arrow, scale_bar
from visits.documents.map_labels import Box, Name, along, around, placed_names
from visits.documents.map_projection import Projection, projection_of
from visits.documents.route_map_content import MapPlace, RouteMap

_MARGIN = 9.0
_FOOT = 9.0


def route_map(content: RouteMap, width: float = 160.0, height: float = 110.0) -> Drawing:
    """The map in a frame `width` x `height` mm, and below it the key of farms. Any width from 80 mm."""
    spots = [(place.lat, place.lon) for place in content.places]
    frame = (width - 2 * _MARGIN, height - 2 * _MARGIN - _FOOT)
    projection = projection_of(spots, (_MARGIN, _MARGIN), frame)
    at = {place.key: projection.point(place.lat, place.lon) for place in content.places}
    shapes: list[Shape] = [Polygon(box(0.2, 0.2, width - 0.2, height - 0.2), None, Pen(Tint.RULE, 0.3))]
    shapes += [shape for order in range(len(content.routes)) for shape in _legs(content, order, at)]
    numbers = content.numbered()
    for place in sorted(content.places, key=lambda place: (place.kind == "base", place.key in numbers)):
        shapes += _mark(place, numbers, at[place.key])
    shapes += _names(content, at, (1, 1, width - 10, height - _FOOT))
    shapes += north_arrow((width - 6, 3))
    shapes += scale_bar(projection, (4, height - 3.5), min(45.0, width / 3))
    listed, end = key_shapes(content, height + 1, width)
    return Drawing(width, end, tuple(shapes + listed), content.title, _told(content, projection))


def _legs(content: RouteMap, order: int, at: dict[str, Point]) -> Iterator[Shape]:
    """The straight lines of a route, each with an arrow head a little past its middle."""
    pen = Pen(Tint.INK, 0.45, dashes_of(order))
    for first, second in pairwise(content.routes[order].stops):
        start, end = at[first], at[second]
        length = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
        if length == 0:
            continue
        yield Line((start, end), pen)
        if length > 12:
            yield _arrow_head(start, end, length)


def _arrow_head(start: Point, end: Point, length: float) -> Polygon:
    ux, uy = (end[0] - start[0]) / length, (end[1] - start[1]) / length
    x, y = start[0] + ux * (length * 0.5 + 1.2), start[1] + uy * (length * 0.5 + 1.2)
    tail = (x - 2.6 * ux, y - 2.6 * uy)
    left, right = (tail[0] - uy, tail[1] + ux), (tail[0] + uy, tail[1] - ux)
    return Polygon(((x, y), left, right), Tint.INK, None)


def _radius(place: MapPlace, numbers: dict[str, str]) -> float:
    if place.kind == "base":
        return 2.4
    return max(2.6, 1.5 + 0.9 * len(numbers[place.key])) if place.key in numbers else 0.8


def _mark(place: MapPlace, numbers: dict[str, str], at: Point) -> list[Shape]:
    """A base is a filled square, a farm on a route a ring with its number, any other farm a small ring."""
    radius, (x, y) = _radius(place, numbers), at
    if place.kind == "base":
        return [Polygon(box(x - 2, y - 2, x + 2, y + 2), Tint.INK, Pen(Tint.PAPER, 0.5))]
    if place.key not in numbers:
        return [Circle(at, radius, Tint.PAPER, Pen(Tint.QUIET, 0.25))]
    tint = tint_of(place.meaning)
    number = Text((x, y + 1.1), numbers[place.key], 3.2, bold=True, tint=tint, anchor="middle")
    return [Circle(at, radius, Tint.PAPER, Pen(tint, 0.5)), number]


def _names(content: RouteMap, at: dict[str, Point], sheet: Box) -> list[Shape]:
    numbers = content.numbered()
    kept = [place for place in content.places if place.kind == "base" or place.key in numbers]
    names = [Name(place.name, at[place.key], _radius(place, numbers)) for place in kept]
    taken = [around(at[place.key], _radius(place, numbers)) for place in content.places]
    for route in content.routes:
        for first, second in pairwise(route.stops):
            taken += along(at[first], at[second])
    found = placed_names(names, taken, sheet, SIZE)
    return [Text((left, bottom - 0.9), name.words, SIZE) for name, (left, _, _, bottom) in found.items()]


def _told(content: RouteMap, projection: Projection) -> str:
    parts = [f"{row.number} {row.words}" for row in key_rows(content)]
    km, _ = projection.scale_bar(45)
    return f"{'; '.join(parts) or 'no farms on a route'}. North is up; the scale bar is {km:g} km."
