"""Told hours that are kept become windows."""

import json
from datetime import datetime

from tests.visits.domain.planning.hand_made import job, monday, week, window
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.board_of_change import board_of_change
from visits.domain.planning.replan.keep_told import keep_told
from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.planning.replan.price_of_change import PriceOfChange


def kept(clock, promise=Promise.TOLD):
    problem = week(job("a", windows=[window("08:00", "11:00"), window("12:00", "16:00")]), job("b", "far"))
    entry = InForce("a", "mon", datetime.fromisoformat(monday(clock)), promise)
    board = board_of_change(read_problem(json.dumps(problem)), [entry], PriceOfChange(0, 10**6, 15))
    return keep_told(problem, board, ((0, 1),))["jobs"]


def test_the_windows_are_cut_to_the_slack_round_the_told_hour():
    first, second = kept("09:00")
    assert first["windows"] == [{"start": monday("08:45"), "end": monday("10:15")}]
    assert second["windows"] == [window()]


def test_the_farms_own_hours_are_never_widened():
    assert kept("12:05")[0]["windows"] == [{"start": monday("12:00"), "end": monday("13:20")}]


def test_an_hour_that_is_broken_or_was_never_told_leaves_the_windows_alone():
    for jobs in (kept("17:00"), kept("09:00", Promise.PLANNED)):
        assert jobs[0]["windows"] == [window("08:00", "11:00"), window("12:00", "16:00")]
