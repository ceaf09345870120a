"""A board on which some starts are held to a span: the same week, less free."""

from collections.abc import Mapping
from copy import copy

from visits.domain.planning.board import Board
from visits.domain.planning.openings import Opening


def held_board(board: Board, shift: int, spans: Mapping[int, tuple[int, int]]) -> Board:
    """`spans` holds the first and last start (deciseconds) of each such job in that shift."""
    held = copy(board)
    held.known = {}
    row = list(board.openings[shift])
    for job, (first, last) in spans.items():
        row[job] = tuple(
            Opening(max(opening.first, first), min(opening.last, last), opening.late)
            for opening in row[job]
            if max(opening.first, first) <= min(opening.last, last)
        )
    held.openings = [*board.openings[:shift], row, *board.openings[shift + 1 :]]
    return held
