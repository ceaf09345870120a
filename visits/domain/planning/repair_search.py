"""Take a few neighbouring jobs out of the week, put them back in better: over and over, with exact timing.

The idea is ruin and recreate (Schrimpf et al. 2000; Christiaens and Vanden Berghe 2020), from memory.
Covers moving one job, swapping two, turning a stretch round and pushing one job out for another.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from math import exp, log
from random import Random

from visits.domain.planning.board import Board, Order
from visits.domain.planning.insertion import insert_all


@dataclass
class RepairSearch:
    """One search; `best` never gets worse."""

    board: Board
    week: list[Order]
    chance: Random
    cost: float = field(init=False)
    best: list[Order] = field(init=False)
    best_cost: float = field(init=False)

    def __post_init__(self) -> None:
        self.cost = self.best_cost = self.board.total(tuple(self.week))
        self.best = list(self.week)
        self.heat = max(1.0, min(self.cost, self.board.missing_price) * 0.003)

    def run(self, done: Callable[[int], float]) -> None:
        """Until `done(steps)` reaches 1; it also sets how bold the search still is."""
        steps = 0
        while (share := done(steps)) < 1 and self.board.problem.jobs:
            self._step(self.heat * exp(log(0.01) * share))
            steps += 1

    def _step(self, heat: float) -> None:
        out = self._taken_out()
        week = [tuple(job for job in order if job not in out) for order in self.week]
        planned = {job for order in week for job in order}
        waiting = [job for job in range(len(self.board.problem.jobs)) if job not in planned]
        self._line_up(waiting)
        found = insert_all(self.board, week, waiting, self.chance)
        cost = self.board.total(tuple(found))
        if cost < self.cost - heat * log(1 - self.chance.random()):
            self.week, self.cost = found, cost
        if cost < self.best_cost - 1e-9:
            self.best, self.best_cost = list(found), cost

    def _taken_out(self) -> set[int]:
        """Jobs near one job picked by lot, up to eight."""
        jobs = self.board.problem.jobs
        planned = [job for order in self.week for job in order]
        if not planned:
            return set()
        times = self.board.problem.travel.times
        first = self.chance.choice(planned)
        near = sorted(
            planned, key=lambda job: times[jobs[first].place][jobs[job].place] * self.chance.uniform(0.6, 1.4)
        )
        return {first, *near[: self.chance.randint(1, min(8, len(planned)))]}

    def _line_up(self, waiting: list[int]) -> None:
        """By lot, by length, or by how few shifts can take the job; jobs that must be planned first at times."""
        jobs, homes = self.board.problem.jobs, self.board.homes
        self.chance.shuffle(waiting)
        way = self.chance.randrange(4)
        if way == 0:
            waiting.sort(key=lambda job: -jobs[job].length)
        elif way == 1:
            waiting.sort(key=lambda job: len(homes[job]))
        elif way == 2:
            waiting.sort(key=lambda job: -self.board.out_cost(job))
