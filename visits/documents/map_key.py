"""The foot of a map: north, scale bar, and the list of numbered farms."""

from dataclasses import dataclass

from trimops.paper.colours import Tint, tint_of
from trimops.paper.drawing import Line, Pen, Point, Polygon, Shape, Text
from trimops.paper.fitting import fitting
from trimops.paper.signs import sign
from visits.documents.map_projection import Projection
from visits.documents.route_map_content import MapPlace, RouteMap

SIZE = 3.4
ROW = 5.4
_DASHES: tuple[tuple[float, ...], ...] = ((), (2.2, 1.2), (0.5, 1.2), (3, 1, 0.6, 1))


def north_arrow(at: Point) -> list[Shape]:
    """An arrow 8 mm tall whose tip is at `at`, with its N."""
    x, y = at
    pen = Pen(Tint.INK, 0.3)
    return [
        Line(((x, y + 8), (x, y + 1)), pen),
        Polygon(((x, y), (x + 1.3, y + 3), (x - 1.3, y + 3)), Tint.INK, None),
        Text((x, y + 11.5), "N", 3.2, bold=True, anchor="middle"),
    ]


def scale_bar(projection: Projection, at: Point, longest: float) -> list[Shape]:
    """A bar of a round number of km, its left end at `at`, with end strokes."""
    (km, length), (x, y) = projection.scale_bar(longest), at
    pen = Pen(Tint.INK, 0.4)
    ends: list[Shape] = [Line(((x + d, y - 1), (x + d, y + 1)), pen) for d in (0, length)]
    return [Line(((x, y), (x + length, y)), pen), *ends, Text((x, y - 2), f"{km:g} km", SIZE)]


@dataclass(frozen=True)
class KeyRow:
    """A numbered farm, or (no place) the name of a route with its dashes."""

    number: str
    words: str
    place: MapPlace | None = None
    dashes: tuple[float, ...] = ()


def key_rows(content: RouteMap) -> list[KeyRow]:
    """Farms in the order driven; with several routes, each under its route's name."""
    places = {place.key: place for place in content.places}
    numbers = content.numbered()
    rows: list[KeyRow] = []
    told: set[str] = set()
    for order, route in enumerate(content.routes):
        if len(content.routes) > 1:
            rows.append(KeyRow(chr(ord("A") + order), route.name, dashes=dashes_of(order)))
        for key in route.stops:
            if key in numbers and key not in told:
                told.add(key)
                rows.append(KeyRow(numbers[key], places[key].name, places[key]))
    return rows


def dashes_of(order: int) -> tuple[float, ...]:
    """The dashes of the line of a route, by its order."""
    return _DASHES[order % len(_DASHES)]


def key_shapes(content: RouteMap, top: float, width: float) -> tuple[list[Shape], float]:
    """The key from `top` down, in as many columns as fit; and where it ends."""
    rows = key_rows(content)
    columns = max(1, min(len(rows), int(width // 60)))
    deep = -(-len(rows) // columns)
    shapes: list[Shape] = []
    for index, row in enumerate(rows):
        column, line = divmod(index, deep)
        at = (3 + column * width / columns, top + (line + 1) * ROW)
        shapes += _row_shapes(row, at, width / columns - 17)
    return shapes, top + deep * ROW + 2


def _row_shapes(row: KeyRow, at: Point, room: float) -> list[Shape]:
    x, y = at
    words = Text((x + 11.5, y), fitting(row.words, room, SIZE), SIZE, bold=row.place is None)
    if row.place is None:
        sample = Line(((x + 6.5, y - 1.2), (x + 10.5, y - 1.2)), Pen(Tint.INK, 0.45, row.dashes))
        return [Text((x + 5.5, y), row.number, SIZE, bold=True, anchor="end"), sample, words]
    number = Text((x + 5.5, y), row.number, SIZE, bold=True, tint=tint_of(row.place.meaning), anchor="end")
    return [number, *sign(row.place.meaning, (x + 8.5, y - 1.2), 2.6), words]
