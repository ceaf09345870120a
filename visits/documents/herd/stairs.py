"""The line of what changes by steps."""

from collections.abc import Sequence

from trimops.paper.drawing import Point


def stairs(points: Sequence[Point], end: float) -> tuple[Point, ...]:
    """Level until the next of `points`, then straight down or up; level on to x = `end`. IndexError without a point."""
    path = [points[0]]
    for x, y in points[1:]:
        path += [(x, path[-1][1]), (x, y)]
    return (*path, (end, path[-1][1]))
