"""One week of the diary as it stands, ready to be asked where one visit more fits."""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import NamedTuple
from zoneinfo import ZoneInfo

from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from visits.domain.planning.board import Board
from visits.domain.planning.measures import instant, nearest_tick
from visits.domain.planning.offers.offer import Place
from visits.domain.planning.offers.standing_week import StandingWeek
from visits.domain.planning.problem import Job
from visits.domain.planning.read_problem import read_problem
from visits.models import HeldHour
from visits.selectors.asked_visit import ASKED, Asked
from visits.selectors.asked_week import asked_week, is_ahead
from visits.selectors.diary_stops import DiaryStop, diary_stops, stand_by_hour


class Spot(NamedTuple):
    """A van (its key) and a day."""

    van: int
    day: date


@dataclass(frozen=True)
class OfferWeek:
    """`job` is what is asked for; None where the farm has no hours left in this week. `stops` are by job index."""

    monday: date
    zone: ZoneInfo
    standing: StandingWeek
    job: Job | None
    stops: Sequence[DiaryStop]

    @property
    def stood(self) -> dict[int, int]:
        """The start of each job in the diary, deciseconds."""
        return {at: nearest_tick(stop.start) for at, stop in enumerate(self.stops)}

    def at(self, ticks: int) -> datetime:
        return instant(ticks, self.zone)

    def spot(self, place: Place) -> Spot:
        """The van and the day of a place."""
        return self.spot_at(place.shift)

    def spot_at(self, shift_at: int) -> Spot:
        """The van and the day of a shift."""
        shift = self.standing.board.problem.shifts[shift_at]
        return Spot(van_of_shift(shift.id), local_day(self.at(shift.start), self.zone))

    def spot_of(self, job: int) -> Spot:
        """Where the job stands in the diary."""
        stop = self.stops[job]
        return Spot(van_of_shift(stop.shift), local_day(stop.start, self.zone))

    def job_of(self, visit: int) -> int | None:
        """The index of the visit's job; None where it has no hour in this week."""
        return next((at for at, stop in enumerate(self.stops) if stop.visit and stop.visit.pk == visit), None)


def van_of_shift(shift: str) -> int:
    """The key of the van of a shift of our problems."""
    return int(shift.split("-")[1])


def offer_week(asked: Asked, monday: date, now: datetime, *, ignore: HeldHour | None = None) -> OfferWeek:
    """The week from `monday` with its planned and confirmed visits and held hours in the order of their hours.

    Confirmed visits, held hours, visits moved for one, and visits that stand outside their farm's hours are
    promised, and told ones if `asked` keeps them. `ignore` is a held hour that counts as not held.
    """
    farm = asked.farm
    stops = diary_stops(Scope(farm.business_id), monday, farm.business.zone, now, ignore)
    if asked.keeps_told:
        stops = [replace(stop, stays=stop.is_told) for stop in stops]
    problem, begun = asked_week(asked, monday, now, stops)
    shifts = {str(shift["id"]) for shift in problem["shifts"]}
    stops = [*begun, *(stop for stop in stops if stop.shift in shifts and is_ahead(stop, begun))]
    known = {str(job["id"]): job for job in problem["jobs"]}
    jobs = [stand_by_hour(stop, known.get(stop.job), problem["shifts"]) for stop in stops]
    wanted = known.get(ASKED)
    whole = read_problem(json.dumps(_only(problem, [*jobs, wanted] if wanted else jobs)))
    job = whole.jobs[-1] if wanted else None
    board = Board(replace(whole, jobs=whole.jobs[: len(jobs)]))
    return OfferWeek(monday, whole.zone, StandingWeek(board, _orders(board, stops)), job, stops)


def freed_jobs(week: OfferWeek) -> dict[int, Job]:
    """The confirmed visits of the week, by job index, as they would be without their promise.

    Their jobs keep the other hours of their farms beside the promised one.
    """
    jobs = week.standing.board.problem.jobs
    return {at: replace(jobs[at], fixed=None) for at, stop in enumerate(week.stops) if stop.is_confirmed}


def _only(problem: Mapping[str, object], jobs: Sequence[Mapping[str, object]]) -> dict[str, object]:
    """The problem with these jobs and their places alone."""
    used = {job["site"] for job in jobs}
    sites = problem["sites"]
    kept = [site for site in sites if site["id"] in used] if isinstance(sites, list) else []
    return {**problem, "sites": kept, "jobs": jobs}


def _orders(board: Board, stops: Sequence[DiaryStop]) -> list[tuple[int, ...]]:
    """The jobs of each shift in the order of their hours."""
    by_hour = sorted(range(len(stops)), key=lambda at: (stops[at].start, at))
    return [tuple(at for at in by_hour if stops[at].shift == shift.id) for shift in board.problem.shifts]
