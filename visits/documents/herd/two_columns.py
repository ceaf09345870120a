"""Blocks of given heights laid out in two columns a page, on as few pages as they need."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import permutations

_MOST_TRIED = 7
Columns = tuple[list[int], list[int]]


@dataclass
class _Page:
    room: float
    columns: Columns = field(default_factory=lambda: ([], []))
    filled: list[float] = field(default_factory=lambda: [0.0, 0.0])

    def takes(self, order: int, height: float) -> bool:
        """Put the block under the shorter column, else under the other; False when it fits under neither."""
        for column in sorted((0, 1), key=lambda column: self.filled[column]):
            if self.filled[column] + height <= self.room:
                self.columns[column].append(order)
                self.filled[column] += height
                return True
        return False


def fewest_pages(heights: Sequence[float], first_room: float, room: float) -> list[Columns]:
    """For each page the numbers of the blocks in its left and in its right column.

    The first block comes first. Of all orders of the others (up to seven blocks; more are taken as they come) it is
    the one with the fewest pages and the lowest end on the last; among equals the one nearest to the given order.
    ValueError for a block higher than `room`.
    """
    if max(heights, default=0) > room:
        raise ValueError("a block is higher than a page")
    layouts = (_filled(order, heights, first_room, room) for order in _orders(len(heights)))
    best = min(layouts, key=lambda pages: (len(pages), round(max(pages[-1].filled), 3)))
    return [page.columns for page in best if any(page.filled)]


def _orders(count: int) -> Iterator[Sequence[int]]:
    if not 1 < count <= _MOST_TRIED:
        yield range(count)
        return
    for rest in permutations(range(1, count)):
        yield (0, *rest)


def _filled(order: Sequence[int], heights: Sequence[float], first_room: float, room: float) -> list[_Page]:
    pages = [_Page(first_room)]
    for number in order:
        if not any(page.takes(number, heights[number]) for page in pages):
            pages.append(_Page(room))
            pages[-1].takes(number, heights[number])
    return pages
