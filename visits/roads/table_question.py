"""The question that an OSRM table answers, as its HTTP interface wants it written."""

from collections.abc import Sequence

from visits.roads.road_engine import SNAP_METRES, Point


def table_path(sources: Sequence[Point], destinations: Sequence[Point], *, is_strict: bool) -> str:
    """Path and query below the server's address. Strict: a place off the map makes the server refuse the question."""
    points = [*sources, *destinations]
    # The interface wants longitude before latitude.
    places = ";".join(f"{longitude:.6f},{latitude:.6f}" for latitude, longitude in points)
    options = [
        "annotations=duration,distance",
        "generate_hints=false",
        "sources=" + _numbers(0, len(sources)),
        "destinations=" + _numbers(len(sources), len(points)),
    ]
    if is_strict:
        options.append("radiuses=" + ";".join([str(SNAP_METRES)] * len(points)))
    return f"/table/v1/driving/{places}?" + "&".join(options)


def _numbers(first: int, end: int) -> str:
    return ";".join(map(str, range(first, end)))
