"""What every search shares: which job can go where, and the exact cost of any order of jobs in a shift."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import pairwise
from math import inf

from visits.domain.planning.openings import Opening, openings
from visits.domain.planning.problem import WeekProblem
from visits.domain.planning.retime import Timing, best_timing
from visits.domain.planning.route import Route

Order = tuple[int, ...]
"""Indexes of jobs, in the order of the day."""
Week = tuple[Order, ...]
"""One order per shift of the problem."""


@dataclass
class Board:
    """A problem with its openings worked out and a memory of every order costed so far.

    `surcharge` is money added where a job is done in a shift: the price of change when a week is planned again.
    It rides on the lateness of the openings.
    """

    problem: WeekProblem
    known: dict[tuple[int, Order], float] = field(default_factory=dict)
    surcharge: Mapping[tuple[int, int], float] = field(default_factory=dict)
    """(job, shift) -> money, 0 or more."""

    def __post_init__(self) -> None:
        jobs, shifts = self.problem.jobs, range(len(self.problem.shifts))
        self.openings = [[self._openings(shift, job) for job in range(len(jobs))] for shift in shifts]
        self.homes = [[shift for shift in shifts if self.openings[shift][job]] for job in range(len(jobs))]
        self.promise_price = self._more_than_any_plan()
        self.missing_price = self.promise_price * (len(jobs) + 1)

    def _openings(self, shift: int, job: int) -> tuple[Opening, ...]:
        found = openings(self.problem, shift, self.problem.jobs[job])
        extra = self.surcharge.get((job, shift), 0.0)
        return tuple(each._replace(late=each.late + extra) for each in found) if extra else found

    def _more_than_any_plan(self) -> float:
        """More than the sum of all costs a plan can have."""
        problem = self.problem
        far = max((max(row) for row in problem.travel.metres), default=0) / 1000
        legs = len(problem.jobs) + len(problem.shifts)
        shifts = sum(s.cost_fixed + (s.end - s.start) / 36_000 * s.cost_per_hour for s in problem.shifts)
        roads = max((s.cost_per_km for s in problem.shifts), default=0) * far * legs
        late = sum(
            max((o[-1].late for row in self.openings if (o := row[at])), default=0)
            for at in range(len(problem.jobs))
        )
        out = sum(job.leave_out_cost or 0 for job in problem.jobs)
        return 2 * (shifts + roads + late + out) + 1

    @cached_property
    def of_one_level(self) -> "Board":
        """The same week as if every herd had one hygiene level."""
        jobs = tuple(replace(job, hygiene=0) for job in self.problem.jobs)
        return Board(replace(self.problem, jobs=jobs), surcharge=self.surcharge)

    def route(self, shift: int, order: Order) -> Route:
        """The timing's view of `order` in that shift."""
        problem = self.problem
        base = problem.shifts[shift].place
        stops = [base, *(problem.jobs[job].place for job in order), base]
        times = problem.travel.times
        legs = tuple(times[a][b] for a, b in pairwise(stops))
        lengths = tuple(problem.jobs[job].length for job in order)
        return Route(problem.shifts[shift], legs, lengths, tuple(self.openings[shift][job] for job in order))

    def road_cost(self, shift: int, order: Order) -> float:
        """Fixed cost and kilometres of a used shift."""
        return self.problem.shifts[shift].cost_fixed + self.metres(shift, order) / 1000 * (
            self.problem.shifts[shift].cost_per_km
        )

    def floor(self, shift: int, order: Order) -> float:
        """A cost the order cannot undercut: no wait, no lateness beyond the least. Quick."""
        route = self.route(shift, order)
        return self.road_cost(shift, order) + route.nonstop * route.hour_rate + route.least_late

    def metres(self, shift: int, order: Order) -> int:
        """Metres of the round."""
        problem = self.problem
        stops = [problem.shifts[shift].place, *(problem.jobs[job].place for job in order)]
        lengths = problem.travel.metres
        return sum(lengths[a][b] for a, b in zip(stops, [*stops[1:], stops[0]], strict=True))

    def allowed(self, shift: int, order: Order) -> bool:
        """Whether cows and hygiene let these jobs share the shift in this order."""
        jobs, limit = self.problem.jobs, self.problem.shifts[shift].max_cows
        if limit is not None and sum(jobs[job].cows for job in order) > limit:
            return False
        return all(jobs[a].hygiene <= jobs[b].hygiene for a, b in pairwise(order))

    def cost(self, shift: int, order: Order) -> float:
        """Cost of the shift with this order, lateness included; infinite where no timing keeps the rules."""
        if not order:
            return 0.0
        if (shift, order) not in self.known:
            self.known[shift, order] = self._cost(shift, order)
        return self.known[shift, order]

    def _cost(self, shift: int, order: Order) -> float:
        timing = self.timing(shift, order)
        return inf if timing is None else timing.cost + self.road_cost(shift, order)

    def timing(self, shift: int, order: Order) -> Timing | None:
        """The exact best timing, or None."""
        return best_timing(self.route(shift, order)) if self.allowed(shift, order) else None

    def out_cost(self, job: int) -> float:
        """Cost of leaving the job out, such that jobs that must be planned come first, promises before others."""
        asked = self.problem.jobs[job]
        if asked.fixed is not None:
            return self.missing_price + self.promise_price + (asked.leave_out_cost or 0.0)
        return self.missing_price if asked.leave_out_cost is None else asked.leave_out_cost

    def total(self, week: Week) -> float:
        """Cost of a whole week, jobs left out included."""
        planned = {job for order in week for job in order}
        out = sum(self.out_cost(job) for job in range(len(self.problem.jobs)) if job not in planned)
        return out + sum(self.cost(shift, order) for shift, order in enumerate(week))
