"""Which rectangles of a table to ask a road map for, so that only missing drives are asked for, in few questions."""

from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

SIDE = 50
"""Most places on a side. A road server takes 100 places a question unless told otherwise."""

Pair = tuple[str, str]


@dataclass(frozen=True)
class Block:
    """Every drive from each of `sources` to each of `destinations`."""

    sources: tuple[str, ...]
    destinations: tuple[str, ...]


def missing_blocks(keys: Sequence[str], known: set[Pair], side: int = SIDE) -> Iterator[Block]:
    """Blocks that hold every pair of different `keys` not in `known`, and no known pair besides.

    Places that miss the drives to the same others are asked for together. A place's drive to itself is free: it
    is put in where that makes its row equal to more rows, so that an empty table is one block and a new farm
    among known ones two.
    """
    rows = {a: frozenset(b for b in keys if a != b and (a, b) not in known) for a in keys}
    shapes = Counter(shape for a, row in rows.items() if row for shape in (row, row | {a}))
    groups: defaultdict[frozenset[str], list[str]] = defaultdict(list)
    for a, row in rows.items():
        if row:
            groups[max((row, row | {a}), key=shapes.__getitem__)].append(a)
    for shape, sources in groups.items():
        yield from _cut(sources, [b for b in keys if b in shape], side)


def _cut(sources: Sequence[str], destinations: Sequence[str], side: int) -> Iterator[Block]:
    for a in range(0, len(sources), side):
        for b in range(0, len(destinations), side):
            yield Block(tuple(sources[a : a + side]), tuple(destinations[b : b + side]))
