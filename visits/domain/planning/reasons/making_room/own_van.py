"""A van sent for one visit alone: when it would leave and be back."""

from collections.abc import Iterator

from visits.domain.planning.board import Board
from visits.domain.planning.measures import minutes
from visits.domain.planning.reasons.reason import Figure, Reason
from visits.domain.planning.reasons.standing import moment_of


def van_of_its_own(board: Board, job: int, other_ways: int) -> Reason:
    """From the nearest base, in the first of its open hours that holds the visit; no hours where none does."""
    figures: dict[str, Figure] = {"minutes": None, "leave": None, "back": None, "other_ways": other_ways}
    for out, home in _drives(board, job):
        asked = board.problem.jobs[job]
        figures["minutes"] = minutes(out + asked.length + home)
        start = min((w.start for w in asked.windows if w.end - w.start >= asked.length), default=None)
        if asked.fixed is not None:
            start = asked.fixed.start
        if start is not None:
            figures["leave"] = moment_of(board, start - out)
            figures["back"] = moment_of(board, start + asked.length + home)
    return Reason("van-of-its-own", figures)


def _drives(board: Board, job: int) -> Iterator[tuple[int, int]]:
    """The shortest drive out with the drive home, deciseconds; nothing where no shift has a base."""
    times, place = board.problem.travel.times, board.problem.jobs[job].place
    bases = {shift.place for shift in board.problem.shifts}
    drives = [(times[base][place], times[place][base]) for base in bases]
    if drives:
        yield min(drives, key=sum)
