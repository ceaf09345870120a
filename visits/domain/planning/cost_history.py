"""How the cost of the best week fell while the planner thought: few points, each lower than the one before."""

from collections.abc import Iterable, Sequence

MOST_POINTS = 200


def falling(told: Iterable[Sequence[float]]) -> list[list[float]]:
    """(seconds, cost) as told, without what is not lower than before; the last instant is kept as the end of the
    line. At most 200 points, so that a long search is still a short row: then every other one goes."""
    points: list[list[float]] = []
    last: Sequence[float] | None = None
    for seconds, cost in told:
        last = (seconds, cost)
        if not points or cost < points[-1][1]:
            points.append([round(seconds, 2), round(cost, 2)])
    if last is not None and points and last[0] > points[-1][0] + 0.005:
        points.append([round(last[0], 2), points[-1][1]])
    return points if len(points) <= MOST_POINTS else [*points[:-1:2], points[-1]]
