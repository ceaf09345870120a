"""A plan document against what no plan of its week can undercut."""

from collections.abc import Mapping

from visits.domain.planning.board import Board, Week
from visits.domain.planning.build_plan import bound_below
from visits.domain.planning.exact.column_generation import Pool
from visits.domain.planning.exact.pricing import MOST_JOBS
from visits.domain.planning.exact.prove_week import prove_week
from visits.domain.planning.exact.time_left import ShouldStop, TimeLeft
from visits.domain.planning.exact.week_rows import document_cost
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.stored_week import week_of_document
from visits.domain.planning.swift.machine import SwiftSearch

WARM_SHARE, WARM_MOST = 0.1, 3.0
"""Of the seconds, and at most so many, for a search that finds good days to set out from."""
HOT, COLD = 0.003, 0.00003
"""Heat of that search, of the cost of the week."""


def bound_of_plan(
    text: str, plan: Mapping[str, object], seconds: float, should_stop: ShouldStop | None = None
) -> float | None:
    """No plan of the problem costs less, in the terms of a plan's `cost.total`, that does as many of the jobs that
    must be done as can be done; never above the cost of `plan`. None where nothing was proven in time."""
    time = TimeLeft(seconds, should_stop)
    board = Board(read_problem(text))
    week = week_of_document(board.problem, plan)
    if len(board.problem.jobs) > MOST_JOBS:
        return None
    better, pool = good_days(board, week, TimeLeft(min(WARM_MOST, seconds * WARM_SHARE), should_stop))
    proof = prove_week(board, min(week, better, key=board.total), time.left, should_stop, pool)
    if proof.bound <= 0 and not proof.closed:
        return None
    return round(bound_below(proof.bound, document_cost(board, week)), 4)


def good_days(board: Board, week: Week, time: TimeLeft) -> tuple[Week, Pool]:
    """The best week of a short search from `week`, and the days it passed through."""
    search = SwiftSearch(board, 1)
    search.begin_with(week)
    usual = document_cost(board, week)
    search.run(lambda _: 1.0 if time.over else 0.5, HOT * usual, COLD * usual)
    return search.best(), dict(search.days_seen())
