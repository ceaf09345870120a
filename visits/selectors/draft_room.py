"""Whether a visit may take longer than planned without moving anybody: its hour and those of the others stay."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime

from trimops.kernel.clock import local_day, monday_of
from visits.domain.planning.board import Board
from visits.domain.planning.measures import PER_MINUTE, deciseconds
from visits.domain.planning.offers.held_board import held_board
from visits.domain.planning.problem import Job, WeekProblem
from visits.domain.visit_states import VisitReason, VisitState
from visits.models import Visit
from visits.selectors.asked_visit import Asked
from visits.selectors.offer_week import offer_week

SLIP = PER_MINUTE
"""Hours of the diary are rounded: nobody is told another for a minute."""


@dataclass(frozen=True)
class DraftRoom:
    """One van's day with every hour in it held; the visit asked about is the job at `at`."""

    day: WeekProblem
    starts: Sequence[int]
    at: int

    def fits(self, minutes: int, cows: int) -> bool:
        """Whether all rules hold if it takes so long: drives, milkings, the meal, the working day, cows a day."""
        jobs = list(self.day.jobs)
        jobs[self.at] = replace(jobs[self.at], length=deciseconds(minutes), cows=cows)
        spans = {job: (start - SLIP, start + SLIP) for job, start in enumerate(self.starts)}
        board = held_board(Board(replace(self.day, jobs=tuple(jobs))), 0, spans)
        return board.timing(0, tuple(range(len(jobs)))) is not None

    def has_cows_for(self, cows: int) -> bool:
        """Whether the van's day has so many cows in it, whatever time they take."""
        most = self.day.shifts[0].max_cows
        others = sum(job.cows for at, job in enumerate(self.day.jobs) if at != self.at)
        return most is None or others + cows <= most


def draft_room(visit: Visit, now: datetime) -> DraftRoom | None:
    """Around the visit's hour; None where it has none, or the day is gone or is not one of its van's.

    The farm and business of the visit must be at hand.
    """
    if visit.planned_start is None or visit.visit_state not in (VisitState.PLANNED, VisitState.CONFIRMED):
        return None
    asked = Asked(
        visit.farm,
        VisitReason(visit.reason),
        visit.head_count,
        visit.expected_minutes,
        visit.due_from,
        visit.due_until,
    )
    week = offer_week(asked, monday_of(local_day(visit.planned_start, visit.business.zone)), now)
    job, problem = week.job_of(visit.pk), week.standing.board.problem
    if job is None:
        return None
    orders = enumerate(week.standing.week)
    shift, order = next(((shift, order) for shift, order in orders if job in order), (0, ()))
    if not order:
        return None
    jobs = tuple(_without_promise(problem.jobs[each]) for each in order)
    day = replace(problem, shifts=(problem.shifts[shift],), jobs=jobs)
    return DraftRoom(day, [week.stood[each] for each in order], order.index(job))


def _without_promise(job: Job) -> Job:
    """The hour is held by its span instead, which may slip as much as the diary is rounded."""
    return replace(job, fixed=None)
