"""Small weeks with their best plan, and the same figures by brute force, which shares no code with the reasons."""

import json
import os
from copy import deepcopy
from dataclasses import dataclass, field

from hypothesis import HealthCheck, settings

from tests.visits.domain.planning.brute_force import STEP, cheapest_round
from visits.domain.planning.board import Board, Week
from visits.domain.planning.exact_small import best_week
from visits.domain.planning.read_problem import read_problem

SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much]
LONG = os.environ.get("TRIMOPS_LONG") == "1"


def _examples(short, long):
    count = long if LONG else short
    return settings(max_examples=count, deadline=None, derandomize=not LONG, suppress_health_check=SLOW)


MANY, FEW = _examples(30, 400), _examples(12, 150)
NEVER = float("inf")


@dataclass
class InHand:
    """A problem document, its board and its best week.

    A visit of no minutes is made one of half an hour: whether a meal may go on over it is told differently by the
    solver (no) and by trying everything (yes), and no farm has such visits.
    """

    problem: dict
    board: Board = field(init=False)
    week: Week = field(init=False)

    def __post_init__(self):
        for job in self.problem["jobs"]:
            job["minutes"] = max(STEP, job["minutes"])
        self.board = Board(read_problem(json.dumps(self.problem)))
        self.week = best_week(self.board)

    @property
    def names(self):
        return [job["id"] for job in self.problem["jobs"]]

    @property
    def shifts(self):
        return [shift["id"] for shift in self.problem["shifts"]]

    @property
    def left_out(self):
        planned = {job for order in self.week for job in order}
        return [job for job in range(len(self.names)) if job not in planned]


def cost(problem, shift, order):
    """What that order (indexes) costs in that shift, infinite where it cannot be done; by brute force."""
    day, jobs = problem["shifts"][shift], [problem["jobs"][job] for job in order]
    if not jobs:
        return 0.0
    if any(day["crew"] not in job.get("crews", [day["crew"]]) for job in jobs):
        return NEVER
    found = cheapest_round(problem, day, jobs)
    return NEVER if found is None else found


def inserted(order, job):
    """The order with the job at each place in turn."""
    return [(*order[:at], job, *order[at:]) for at in range(len(order) + 1)]


def ways_in(problem, week, job, before=None):
    """(extra cost, shift, order) of every place for the job; `before`: the problem of the week as it stands."""
    found = []
    for shift, order in enumerate(week):
        old = cost(before or problem, shift, order)
        found += [(cost(problem, shift, each) - old, shift, each) for each in inserted(order, job)]
    return [each for each in found if each[0] < NEVER]


def changed(problem, **parts):
    """A deep copy with whole lists replaced."""
    return deepcopy(problem) | parts
