"""Prices on the board are those that are paid."""

import json
from datetime import datetime

import pytest

from tests.visits.domain.planning.hand_made import job, monday, shift, week
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.board_of_change import board_of_change, whole_surcharge
from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.planning.replan.price_of_change import PriceOfChange

PRICE = PriceOfChange(visit=1000, told_hour=300, minutes=30)
TUESDAY = shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:30:00+00:00")
BOTH = [{"start": s["start"], "end": s["end"]} for s in (shift(), TUESDAY)]


def made(promise, **changes):
    problem = week(job("a", windows=BOTH, **changes), shifts=[shift(), TUESDAY])
    entry = InForce("a", "mon", datetime.fromisoformat(monday("10:00")), promise)
    return board_of_change(read_problem(json.dumps(problem)), [entry], PRICE)


@pytest.mark.parametrize(("promise", "paid"), [(Promise.PLANNED, 1000), (Promise.TOLD, 1300)])
def test_another_day_costs_its_price_and_so_does_leaving_out(promise, paid):
    board = made(promise, leave_out_cost=50)
    assert board.cost(1, (0,)) - board.cost(0, (0,)) == pytest.approx(paid)
    assert board.out_cost(0) == 50 + paid
    assert whole_surcharge(board) == {(0, 1): paid}


def test_a_fixed_visit_and_one_that_is_new_have_no_price():
    board = made(Promise.CONFIRMED, fixed={"shift": "mon", "start": monday("10:00")})
    assert (board.surcharge, board.told, board.dropped) == ({}, {}, {})


def test_a_price_of_nothing_changes_no_cost():
    problem = read_problem(json.dumps(week(job("a", windows=BOTH), shifts=[shift(), TUESDAY])))
    entry = InForce("a", "mon", datetime.fromisoformat(monday("10:00")), Promise.TOLD)
    board = board_of_change(problem, [entry], PriceOfChange(0, 0, 30))
    assert board.cost(0, (0,)) == board.cost(1, (0,))
