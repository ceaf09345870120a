"""A job that asks for room: its own figures and when it may start in each shift."""

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass, replace

from visits.domain.planning.board import Board
from visits.domain.planning.openings import Opening, openings
from visits.domain.planning.problem import Job


@dataclass(frozen=True)
class Guest:
    """`at` is its index on the board; `openings` has an entry for each shift."""

    at: int
    job: Job
    openings: Sequence[Sequence[Opening]]


def guest_of(board: Board, job: int) -> Guest:
    """A job of the problem as one that asks for room."""
    return Guest(job, board.problem.jobs[job], [row[job] for row in board.openings])


def board_with(board: Board, job: Job) -> tuple[Board, Guest]:
    """The board with one job more, at the last index. What is known of the old orders stays known.

    `job.place` must be a place of the problem's travel tables.
    """
    problem = replace(board.problem, jobs=(*board.problem.jobs, job))
    at = len(board.problem.jobs)
    opened = [openings(problem, shift, job) for shift in range(len(problem.shifts))]
    wider = copy(board)
    wider.problem = problem
    wider.known = dict(board.known)
    wider.openings = [[*row, options] for row, options in zip(board.openings, opened, strict=True)]
    wider.homes = [*board.homes, [shift for shift, options in enumerate(opened) if options]]
    return wider, Guest(at, job, opened)
