"""Functions of time made of pieces, each either "it is then" or "so much later": the arithmetic of waiting.

Leave later and you come home later by as much, or, where somebody waits for a gate to open, at the same hour.
So what a drive, a visit, a meal do to the clock is made of such pieces, and so is any chain of them. All times
are whole deciseconds; pieces of a function are in order and do not overlap; where there is none, it cannot be done.
"""

from collections.abc import Sequence
from typing import NamedTuple

NEVER = 1 << 60
"""Beyond every instant."""


class Piece(NamedTuple):
    """From `first` to `last` (both included): `add` itself, or so much later than the time put in if it `flows`."""

    first: int
    last: int
    add: int
    flows: bool


Pieces = Sequence[Piece]


def up_to(limit: int) -> Pieces:
    """The time itself, up to `limit`."""
    return (Piece(-NEVER, limit, 0, True),)


def chained(then: Pieces, first: Pieces) -> list[Piece]:
    """`then` after `first`: put the outcome of `first` into `then`."""
    made: list[Piece] = []
    for low, high, add, flows in first:
        for begins, ends, more, goes_on in then:
            if flows:
                since = low if low > begins - add else begins - add
                until = high if high < ends - add else ends - add
                if since <= until:
                    made.append(Piece(since, until, add + more if goes_on else more, goes_on))
            elif begins <= add <= ends:
                made.append(Piece(low, high, add + more if goes_on else more, False))
                break
    return made


def visit(starts: Sequence[tuple[int, int]], after: int) -> list[Piece]:
    """Ready at the gate -> `after` deciseconds behind the earliest start that is allowed (spans in order)."""
    made: list[Piece] = []
    seen = -NEVER
    for first, last in starts:
        if seen < first:
            made.append(Piece(seen, first - 1, first + after, False))
        made.append(Piece(first, last, after, True))
        seen = last + 1
    return made


def meal_on_drive(drive: int, meal: tuple[int, int, int], *, to_base: bool) -> list[Piece]:
    """Free at one place -> ready at the next, driven and fed. `meal` is (length, earliest, latest begin).

    Eaten on arrival if that is in time, else before driving. On the drive to the base only before it: a meal at
    the base is no meal on the way.
    """
    length, earliest, latest = meal
    on_arrival = [] if to_base else _eaten(earliest - drive, latest - drive, -NEVER, length + drive)
    since = -NEVER if to_base else latest - drive + 1
    return on_arrival + _eaten(earliest, latest, since, length + drive)


def _eaten(earliest: int, latest: int, since: int, after: int) -> list[Piece]:
    """Begin at `earliest` or as soon as free after that, till `latest`; only for those free at `since` or later."""
    made = []
    if since < earliest:
        made.append(Piece(since, min(earliest - 1, latest), earliest + after, False))
    if max(since, earliest) <= latest:
        made.append(Piece(max(since, earliest), latest, after, True))
    return made
