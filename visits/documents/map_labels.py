"""Names beside places: each on the first of eight sides where it meets nothing, else left out (the key has it)."""

from collections.abc import Iterable
from dataclasses import dataclass

from trimops.paper.drawing import Point
from trimops.paper.typefaces import BODY, width_of

Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""


@dataclass(frozen=True)
class Name:
    """A name to place beside a mark of `radius` mm at `at`."""

    words: str
    at: Point
    radius: float


def placed_names(names: Iterable[Name], taken: Iterable[Box], sheet: Box, size: float) -> dict[Name, Box]:
    """The names that found room and where; `taken` are boxes to keep clear of. Earlier names choose first."""
    boxes = list(taken)
    found: dict[Name, Box] = {}
    for name in names:
        for candidate in _sides(name, size):
            if _inside(candidate, sheet) and not any(_meet(candidate, other) for other in boxes):
                found[name] = candidate
                boxes.append(candidate)
                break
    return found


def around(at: Point, radius: float) -> Box:
    """The box about a round mark."""
    return at[0] - radius, at[1] - radius, at[0] + radius, at[1] + radius


def along(start: Point, end: Point, step: float = 2.0) -> list[Box]:
    """Small boxes along a straight line, so that names keep off it."""
    length = max(abs(end[0] - start[0]), abs(end[1] - start[1]))
    count = max(1, int(length / step))
    parts = [i / count for i in range(count + 1)]
    return [
        around((start[0] + (end[0] - start[0]) * p, start[1] + (end[1] - start[1]) * p), 0.3) for p in parts
    ]


def _sides(name: Name, size: float) -> list[Box]:
    (x, y), gap = name.at, name.radius + 0.8
    width, half = width_of(name.words, BODY, size), size * 0.55
    right, left = (x + gap, x + gap + width), (x - gap - width, x - gap)
    middle, over, under = (
        (x - width / 2, x + width / 2),
        (y - gap - 2 * half, y - gap),
        (y + gap, y + gap + 2 * half),
    )
    beside = (y - half, y + half)
    spots = [(right, beside), (left, beside), (middle, over), (middle, under)]
    spots += [(right, over), (right, under), (left, over), (left, under)]
    return [(across[0], down[0], across[1], down[1]) for across, down in spots]


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _inside(one: Box, sheet: Box) -> bool:
    return one[0] >= sheet[0] and one[1] >= sheet[1] and one[2] <= sheet[2] and one[3] <= sheet[3]
