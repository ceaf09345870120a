"""A week as rows and columns to choose from: each job done once or left out, each shift used once at most.

Jobs that must be planned come first. So the number left out is a row of its own, not a price that would drown the
pennies: no plan that is best leaves out more weight than the best plan known. Weights put the number of such jobs
before promises, as `Board.out_cost` does.
"""

from collections.abc import Sequence
from math import inf

from visits.domain.planning.board import Board, Order, Week
from visits.domain.planning.exact.cover_model import Column, CoverModel


class WeekRows:
    """Row numbers: job j is row j, shift s is row J + s, the weight left out is the last."""

    def __init__(self, board: Board, weight_left: int, weight_price: float = 0.0) -> None:
        jobs, shifts = board.problem.jobs, board.problem.shifts
        self.board = board
        self.weight_left = weight_left
        self.weight_price = weight_price
        self.weights = [weight_of(board, job) for job in range(len(jobs))]
        self.shift_row, self.weight_row = len(jobs), len(jobs) + len(shifts)

    def model(self) -> CoverModel:
        """The rows with the columns that leave a job out; these come first, one per job, in order."""
        jobs, shifts = len(self.board.problem.jobs), len(self.board.problem.shifts)
        model = CoverModel(
            [1.0] * jobs + [-inf] * (shifts + 1), [1.0] * (jobs + shifts) + [float(self.weight_left)]
        )
        model.add([self.left_out(job) for job in range(jobs)])
        return model

    def left_out(self, job: int) -> Column:
        """The job is not done."""
        weight = float(self.weights[job])
        most = 1.0 if weight <= self.weight_left else 0.0
        cost = (self.board.problem.jobs[job].leave_out_cost or 0.0) + weight * self.weight_price
        return Column(cost, (job, self.weight_row), (1.0, weight), most)

    def day(self, shift: int, jobs: Sequence[int], cost: float) -> Column:
        """The shift does these jobs; one named twice counts twice."""
        counts: dict[int, float] = {}
        for job in jobs:
            counts[job] = counts.get(job, 0.0) + 1.0
        return Column(cost, (*counts, self.shift_row + shift), (*counts.values(), 1.0))


def days_of(week: Week) -> list[tuple[int, Order]]:
    """The shifts of a week that are used."""
    return [(shift, order) for shift, order in enumerate(week) if order]


def left_by(board: Board, week: Week) -> list[int]:
    """The jobs this week leaves out."""
    planned = {job for order in week for job in order}
    return [job for job in range(len(board.problem.jobs)) if job not in planned]


def weight_of(board: Board, job: int) -> int:
    """0 where the job may be left out; else so that a missing job weighs more than all promises together."""
    asked = board.problem.jobs[job]
    if asked.fixed is not None:
        return len(board.problem.jobs) + 2
    return len(board.problem.jobs) + 1 if asked.leave_out_cost is None else 0


def weight_left_by(board: Board, week: Week) -> int:
    """The weight of what this week leaves out."""
    return sum(weight_of(board, job) for job in left_by(board, week))


def document_cost(board: Board, week: Week) -> float:
    """The cost as a plan document counts it: without the price of jobs that must be done."""
    out = sum(board.problem.jobs[job].leave_out_cost or 0.0 for job in left_by(board, week))
    return out + sum(board.cost(shift, order) for shift, order in days_of(week))
