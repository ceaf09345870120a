"""How many more cows an edge will cut, told with its doubt."""

from dataclasses import dataclass

from visits.domain.kit.edge_life import EdgeLife

EARLY, HALF, LATE = 0.1, 0.5, 0.9


@dataclass(frozen=True)
class EdgeOutlook:
    """More cows an edge will cut, by what such edges have cut.

    `sure`: with no more than the accepted chance of going dull before. `low`, `middle`, `high`: in one of ten, in five,
    in nine of ten cases it goes dull by then (prediction interval of 80 %); all the same for a figure that the business
    set. `is_dull`: nothing is left. `is_beyond`: it has cut more than any edge before, so nothing can be told of it.
    """

    cows: int
    sure: int
    low: int
    middle: int
    high: int
    is_dull: bool = False
    is_beyond: bool = False


def edge_outlook(life: EdgeLife, cows: int, limit: float, *, is_dull: bool = False) -> EdgeOutlook:
    """The outlook of an edge with `cows` behind it; `limit`: the accepted chance, 0 to 1."""
    if is_dull:
        return EdgeOutlook(cows, 0, 0, 0, 0, is_dull=True)
    sure, low, middle, high = (life.cows_left(cows, chance) for chance in (limit, EARLY, HALF, LATE))
    return EdgeOutlook(cows, sure, low, middle, high, is_beyond=life.is_beyond(cows, 1))
