"""What is left of a stretch of time when parts of it are taken."""

from collections.abc import Iterable
from datetime import datetime

Piece = tuple[datetime, datetime]


def open_pieces(start: datetime, end: datetime, taken: Iterable[Piece]) -> list[Piece]:
    """The pieces between `start` and `end` that none of `taken` touches, in their order; all aware."""
    pieces: list[Piece] = []
    free_from = start
    for begin, until in sorted(taken):
        if until <= free_from or begin >= end:
            continue
        if begin > free_from:
            pieces.append((free_from, begin))
        free_from = until
    if free_from < end:
        pieces.append((free_from, end))
    return pieces


def best_piece(pieces: Iterable[Piece], promised: Iterable[Piece]) -> Piece | None:
    """The piece in which most of `promised` lie whole, of those the longest, of those the first; None of none."""
    kept = list(promised)

    def weight(piece: Piece) -> tuple[int, float]:
        held = sum(piece[0] <= begin and until <= piece[1] for begin, until in kept)
        return held, (piece[1] - piece[0]).total_seconds()

    return max(pieces, key=weight, default=None)
