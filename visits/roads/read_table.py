"""Reads the answer of an OSRM table. It comes from outside: every figure is looked at before it is believed."""

from collections.abc import Mapping, Sequence

from visits.domain.travel.drive import CarLeg
from visits.roads.road_engine import SNAP_METRES, CarTable, RoadsUnavailable

LONGEST_SECONDS = 48 * 3600
LONGEST_METRES = 5_000_000
HALF_ROUND_THE_EARTH = 20_100_000


def read_table(answer: object, rows: int, columns: int) -> CarTable:
    """`rows` x `columns` legs; None where a cell is null or one of its ends is off the map.

    RoadsUnavailable for another size, a cell that is no figure, a negative or absurd one, or a place of which the
    answer does not say how far from the road it is.
    """
    if not isinstance(answer, Mapping):
        raise RoadsUnavailable("the answer is not a table")
    seconds = _grid(answer, "durations", rows, columns, LONGEST_SECONDS)
    metres = _grid(answer, "distances", rows, columns, LONGEST_METRES)
    froms, tos = _on_map(answer, "sources", rows), _on_map(answer, "destinations", columns)
    return tuple(
        tuple(_leg(seconds[a][b], metres[a][b]) if froms[a] and tos[b] else None for b in range(columns))
        for a in range(rows)
    )


def _leg(seconds: float | None, metres: float | None) -> CarLeg | None:
    return None if seconds is None or metres is None else CarLeg(seconds, metres)


def _grid(
    answer: Mapping[str, object], name: str, rows: int, columns: int, most: float
) -> list[list[float | None]]:
    grid = [_items(row, name, columns) for row in _items(answer.get(name), name, rows)]
    return [[_figure(cell, name, most) for cell in row] for row in grid]


def _items(found: object, name: str, size: int) -> Sequence[object]:
    if not isinstance(found, list) or len(found) != size:
        raise RoadsUnavailable(f"the answer's {name} are not of the size asked for")
    return found


def _figure(cell: object, name: str, most: float) -> float | None:
    if cell is None:
        return None
    if isinstance(cell, bool) or not isinstance(cell, int | float):
        raise RoadsUnavailable(f"the answer's {name} hold something that is no figure")
    # What is no number at all compares as false.
    if not 0 <= cell <= most:
        raise RoadsUnavailable(f"the answer's {name} hold a figure that no drive has")
    return float(cell)


def _on_map(answer: Mapping[str, object], name: str, size: int) -> list[bool]:
    """Whether each place lies near enough to a road."""
    places = _items(answer.get(name), name, size)
    off = [
        _figure(place.get("distance"), name, HALF_ROUND_THE_EARTH) if isinstance(place, Mapping) else None
        for place in places
    ]
    if None in off:
        raise RoadsUnavailable(f"the answer does not say how far its {name} are from a road")
    return [metres <= SNAP_METRES for metres in off if metres is not None]
