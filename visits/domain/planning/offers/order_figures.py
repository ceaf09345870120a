"""The two lanes of one round, to its end and back to its beginning: kept per week, asked for every new job."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import inf

from visits.domain.planning.board import Board, Order
from visits.domain.planning.leave_times import gone_too_late
from visits.domain.planning.offers.lane import Lane, LaneEnd, LaneStop, Meal
from visits.domain.planning.openings import Opening
from visits.domain.planning.problem import Shift
from visits.domain.planning.retime import Timing


@dataclass(frozen=True)
class OrderFigures:
    """What is known of an order of jobs in a shift before anything is put into it."""

    board: Board
    shift_at: int
    order: Order

    @cached_property
    def shift(self) -> Shift:
        return self.board.problem.shifts[self.shift_at]

    @cached_property
    def places(self) -> tuple[int, ...]:
        """Places of the round, the base at both ends."""
        base, jobs = self.shift.place, self.board.problem.jobs
        return (base, *(jobs[job].place for job in self.order), base)

    @cached_property
    def levels(self) -> tuple[int, ...]:
        """Hygiene levels of the herds, in order."""
        return tuple(self.board.problem.jobs[job].hygiene for job in self.order)

    @cached_property
    def cows(self) -> int:
        return sum(self.board.problem.jobs[job].cows for job in self.order)

    @cached_property
    def nonstop(self) -> int:
        """Deciseconds of drives and jobs without any wait."""
        return self.board.route(self.shift_at, self.order).nonstop

    @cached_property
    def metres(self) -> int:
        return self.board.metres(self.shift_at, self.order) if self.order else 0

    @cached_property
    def timing(self) -> Timing | None:
        """The best timing as it stands; None for a round that breaks a rule, or that is not driven at all."""
        return self.board.timing(self.shift_at, self.order) if self.order else None

    @cached_property
    def cost(self) -> float:
        """Cost as it stands; infinite where it breaks a rule."""
        if not self.order:
            return 0.0
        return inf if self.timing is None else self.timing.cost + self.road_cost

    @cached_property
    def work(self) -> int:
        """Deciseconds of work as it stands; 0 for a shift that stays in."""
        return self.timing.back - self.timing.leave if self.timing else 0

    @cached_property
    def road_cost(self) -> float:
        return self.board.road_cost(self.shift_at, self.order) if self.order else 0.0

    @cached_property
    def money(self) -> float:
        """Price of that work, of the kilometres and of the van going out; 0 for a shift that stays in."""
        return self.work * self.shift.cost_per_hour / 36_000 + self.road_cost

    @cached_property
    def late(self) -> float | None:
        """The lateness of these jobs if the time of day cannot change it, else None."""
        options = [self._openings(job) for job in self.order]
        if any(opening.late != each[0].late for each in options for opening in each):
            return None
        return sum(each[0].late for each in options if each)

    @cached_property
    def onward(self) -> Lane:
        """Index k: ready at stop k (the base after the last) -> the earliest return."""
        stops = [
            LaneStop([(first, last) for first, last, _ in self._openings(job)], self._length(job), drive)
            for job, drive in zip(self.order, self._drives[1:], strict=True)
        ]
        return Lane(stops, self._home, self.meal)

    @cached_property
    def backward(self) -> Lane:
        """The clock negated. Index k: done with the last stop but k (the base before the first) -> latest leaving."""
        stops = [
            LaneStop(
                [(-last - length, -first - length) for first, last, _ in reversed(self._openings(job))],
                length,
                drive,
            )
            for job, drive in zip(self.order[::-1], self._drives[-2::-1], strict=True)
            for length in [self._length(job)]
        ]
        return Lane(stops, self._leaving, self.meal_backward)

    @cached_property
    def meal(self) -> Meal | None:
        meal = self.shift.meal
        return (meal.length, meal.earliest, meal.latest) if meal else None

    @cached_property
    def meal_backward(self) -> Meal | None:
        meal = self.shift.meal
        return (meal.length, -meal.latest - meal.length, -meal.earliest - meal.length) if meal else None

    @property
    def _home(self) -> LaneEnd:
        """Hungry one must be back before meal time, or in time to eat at the base within the shift."""
        end, meal = self.shift.end, self.shift.meal
        if meal is None:
            return LaneEnd(end, end)
        hungry = min(end, meal.earliest)
        if meal.earliest + meal.length <= end:
            hungry = max(hungry, min(meal.latest, end - meal.length))
        return LaneEnd(end, hungry)

    @property
    def _leaving(self) -> LaneEnd:
        """Without a meal on the way one must leave after meal time, or fed at the base within the shift."""
        start, meal = self.shift.start, self.shift.meal
        if meal is None:
            return LaneEnd(-start, -start)
        free = min(gone_too_late(meal), max(meal.earliest, start) + meal.length)
        return LaneEnd(-start, -max(start, free))

    @cached_property
    def _drives(self) -> list[int]:
        times, places = self.board.problem.travel.times, self.places
        return [times[a][b] for a, b in pairwise(places)]

    def _openings(self, job: int) -> Sequence[Opening]:
        return self.board.openings[self.shift_at][job]

    def _length(self, job: int) -> int:
        return self.board.problem.jobs[job].length
