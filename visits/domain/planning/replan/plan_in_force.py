"""The plan that the diary holds now: who is to come where and when, and how firmly that is promised."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from enum import StrEnum

from visits.domain.planning.board import Board, Week
from visits.domain.planning.measures import instant, kilometres, minutes, tick, written
from visits.domain.planning.openings import days_late
from visits.domain.planning.problem import WeekProblem

FORMAT = "trimops-week-plan/1"
BY_DIARY = "trimops-diary"


class Promise(StrEnum):
    """What the farm knows of its hour."""

    CONFIRMED = "confirmed"
    TOLD = "told"
    PLANNED = "planned"

    @property
    def is_known(self) -> bool:
        """Whether the farm has been given an hour."""
        return self is not Promise.PLANNED


@dataclass(frozen=True)
class InForce:
    """A visit with its hour: ids of the week problem, an aware start, and how firm it is.

    `told` is the hour the farm was given where that is another than `start`. `crew` is that of the shift.
    """

    job: str
    shift: str
    start: datetime
    promise: Promise = Promise.PLANNED
    told: datetime | None = None
    crew: str = ""

    @property
    def known_hour(self) -> datetime | None:
        """The hour the farm counts on; None where it knows of none."""
        return (self.told or self.start) if self.promise.is_known else None


def week_in_force(problem: WeekProblem, in_force: Sequence[InForce]) -> Week:
    """The diary's orders by the indexes of `problem`; visits and shifts that it no longer has are passed over."""
    shifts = {shift.id: at for at, shift in enumerate(problem.shifts)}
    jobs = {job.id: at for at, job in enumerate(problem.jobs)}
    orders: list[list[int]] = [[] for _ in problem.shifts]
    for entry in sorted(in_force, key=lambda each: (each.start, each.job)):
        if entry.shift in shifts and entry.job in jobs:
            orders[shifts[entry.shift]].append(jobs[entry.job])
    return tuple(tuple(order) for order in orders)


def document_in_force(problem: WeekProblem, in_force: Sequence[InForce]) -> dict[str, object]:
    """The diary in the shape of a plan document, with the diary's own hours and what it costs.

    Each van leaves as late, and is back as early, as its hours allow. It is there to be compared with, not to be
    audited: hours put in by hand may break a rule. Visits in a shift that the problem no longer has (`lost_shifts`)
    are told with their hours and cost nothing.
    """
    board, week = Board(problem), week_in_force(problem, in_force)
    starts = {entry.job: tick(entry.start) for entry in in_force}
    shifts = [_shift(board, at, order, starts) for at, order in enumerate(week) if order]
    lost = list(_lost(problem, in_force))
    planned = {job for order in week for job in order}
    known = {job.id for at, job in enumerate(problem.jobs) if at in planned}
    known |= {str(stop["job"]) for _, stops in lost for stop in stops}
    out = [job for job in problem.jobs if job.id not in known]
    parts = {
        "shifts": sum(float(str(shift.pop("money"))) for shift in shifts),
        "lateness": sum(_late(problem, job, starts) for job in planned),
        "left_out": sum(job.leave_out_cost or 0.0 for job in out),
    }
    return {
        "format": FORMAT,
        "engine": BY_DIARY,
        "seed": 0,
        "seconds": 0,
        "cost": {"total": sum(parts.values()), **parts},
        "bound": None,
        "shifts": [*shifts, *(_bare(shift, stops) for shift, stops in lost)],
        "left_out": [{"job": job.id, "reason": "no-room", "detail": "It has no hour yet."} for job in out],
    }


def lost_shifts(problem: WeekProblem, in_force: Sequence[InForce]) -> list[dict[str, object]]:
    """Shifts (id and crew) in which the diary has visits, though the van no longer goes out."""
    gone = {entry.shift: entry.crew for entry in in_force}
    return [
        {"id": shift, "crew": crew}
        for shift, crew in gone.items()
        if shift not in {each.id for each in problem.shifts}
    ]


Stops = list[dict[str, object]]


def _lost(problem: WeekProblem, in_force: Sequence[InForce]) -> Iterator[tuple[str, Stops]]:
    lengths = {job.id: timedelta(seconds=job.length / 10) for job in problem.jobs}
    for shift in lost_shifts(problem, in_force):
        stops: Stops = [
            {
                "job": entry.job,
                "start": entry.start.isoformat(),
                "finish": (entry.start + lengths[entry.job]).isoformat(),
            }
            for entry in sorted(in_force, key=lambda each: each.start)
            if entry.shift == shift["id"] and entry.job in lengths
        ]
        if stops:
            yield str(shift["id"]), stops


def _bare(shift: str, stops: Stops) -> dict[str, object]:
    return {
        "id": shift,
        "leave": stops[0]["start"],
        "return": stops[-1]["finish"],
        "work_minutes": 0,
        "km": 0,
        "cows": 0,
        "meal": None,
        "stops": stops,
    }


def _late(problem: WeekProblem, at: int, starts: Mapping[str, int]) -> float:
    job = problem.jobs[at]
    return days_late(job, starts[job.id], problem.zone) * job.late_cost_per_day


def _shift(board: Board, at: int, order: Sequence[int], starts: Mapping[str, int]) -> dict[str, object]:
    problem, shift = board.problem, board.problem.shifts[at]
    jobs, times = [problem.jobs[job] for job in order], problem.travel.times
    leave = starts[jobs[0].id] - times[shift.place][jobs[0].place]
    back = starts[jobs[-1].id] + jobs[-1].length + times[jobs[-1].place][shift.place]
    here, stops = shift.place, []
    for job in jobs:
        start, drive = starts[job.id], times[here][job.place]
        stops.append(
            {
                "job": job.id,
                "arrive": written(start, problem.zone),
                "start": written(start, problem.zone),
                "finish": (instant(start, problem.zone) + timedelta(seconds=job.length / 10)).isoformat(),
                "travel_minutes": minutes(drive),
                "km": kilometres(problem.travel.metres[here][job.place]),
                "days_late": days_late(job, start, problem.zone),
            }
        )
        here = job.place
    return {
        "id": shift.id,
        "leave": written(leave, problem.zone),
        "return": written(back, problem.zone),
        "work_minutes": minutes(back - leave),
        "km": kilometres(board.metres(at, tuple(order))),
        "cows": sum(job.cows for job in jobs),
        "meal": None,
        "stops": stops,
        "money": board.road_cost(at, tuple(order)) + (back - leave) / 36_000 * shift.cost_per_hour,
    }
