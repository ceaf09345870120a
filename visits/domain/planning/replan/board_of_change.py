"""A problem, the plan in force and the price of change, put on one board."""

from collections.abc import Sequence

from visits.domain.planning.measures import deciseconds, tick
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.replan.plan_in_force import InForce
from visits.domain.planning.replan.price_of_change import PriceOfChange
from visits.domain.planning.replan.priced_board import PricedBoard, ToldHour


def board_of_change(problem: WeekProblem, in_force: Sequence[InForce], price: PriceOfChange) -> PricedBoard:
    """Entries for visits that the problem no longer has, and for fixed ones (they cannot move), have no price."""
    jobs = {job.id: at for at, job in enumerate(problem.jobs) if job.fixed is None}
    movable = [(jobs[entry.job], entry) for entry in in_force if entry.job in jobs]
    return PricedBoard(
        problem,
        surcharge={
            (job, at): price.visit
            for job, entry in movable
            for at, shift in enumerate(problem.shifts)
            if shift.id != entry.shift and price.visit
        },
        told={
            job: ToldHour(tick(hour), deciseconds(price.minutes), price.told_hour)
            for job, entry in movable
            if (hour := entry.known_hour)
        },
        dropped={
            job: price.visit + (price.told_hour if entry.promise.is_known else 0.0) for job, entry in movable
        },
    )


def whole_surcharge(board: PricedBoard) -> dict[tuple[int, int], float]:
    """(job, shift) -> the least that having that job there costs as a change, told hours included.

    For a search that knows no told hours: exact but for moves within the day on which the hour was told.
    """
    found = dict(board.surcharge)
    for job, told in board.told.items():
        for shift, row in enumerate(board.openings):
            near = any(
                each.first <= told.start + told.slack and each.last >= told.start - told.slack
                for each in row[job]
            )
            if row[job] and not near:
                found[job, shift] = found.get((job, shift), 0.0) + told.price
    return found
