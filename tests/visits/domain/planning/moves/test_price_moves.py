"""Each place's price is the truth: against exhaustive re-timing on a grid, and against the audited plan."""

import json
import time
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.bench.planning.made_up_weeks import made_up_week
from tests.random_examples import examples
from tests.visits.domain.planning.brute_force import cheapest_round
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.insertion import insert_all
from visits.domain.planning.moves.price_moves import price_moves
from visits.domain.planning.moves.say_why_not import say_why_not
from visits.domain.planning.moves.week_orders import with_stop
from visits.domain.planning.moves.why_not import Rule
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.stored_week import document_of_week

DAYS = [shift(id="mon"), shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:30:00+00:00")]
BOTH = [
    {"start": f"2026-03-0{day}T07:00:00+00:00", "end": f"2026-03-0{day}T17:30:00+00:00"} for day in (2, 3)
]


def two_days(*jobs):
    return week(*(each | {"windows": BOTH} for each in jobs), shifts=DAYS)


def exhaustive(problem, week_orders):
    """Cost of all shifts by trying every leaving time and meal; None where one of them cannot be done."""
    total = 0.0
    for van, order in zip(problem["shifts"], week_orders, strict=True):
        if order:
            day = [problem["jobs"][at] for at in order]
            cost = cheapest_round(problem, van, day)
            may = all(van["crew"] in each.get("crews", [van["crew"]]) for each in day)
            if not may or cost is None or cost == float("inf"):
                return None
            total += cost
    return total


@settings(max_examples=examples(60), deadline=None, suppress_health_check=list(HealthCheck))
@given(small_weeks(most_jobs=4), st.data())
def test_every_place_costs_what_trying_every_timing_says_and_no_other_is_possible(problem, data):
    """Source: our own brute force on a half-hour grid, which shares no code with the planner."""
    if not problem["jobs"]:
        return
    known = Board(read_problem(json.dumps(problem)))
    orders = insert_all(known, [()] * len(problem["shifts"]), range(len(problem["jobs"])))
    moved = data.draw(st.integers(0, len(problem["jobs"]) - 1))
    now = exhaustive(problem, orders)
    moves = price_moves(known, tuple(orders), moved)
    assert len(moves.places) == sum(len(set(order) - {moved}) + 1 for order in orders)
    for place in moves.places:
        truth = exhaustive(problem, with_stop(tuple(orders), moved, place.shift, place.position))
        assert (place.price is None) == (truth is None) == (place.why_not is not None)
        if place.price is not None:
            assert place.price.money == pytest.approx(truth - now, abs=1e-3)


def test_minutes_and_kilometres_are_those_of_the_audited_plans():
    problem = two_days(job("a", "near"), job("b", "far"), job("c", "middle"))
    known, now = board(problem), ((0, 1), (2,))
    before = document_of_week(json.dumps(problem), known, now)
    for place in price_moves(known, now, 2).places:
        after = document_of_week(json.dumps(problem), known, with_stop(now, 2, place.shift, place.position))
        assert place.price.work / 600 == pytest.approx(
            total(after, "work_minutes") - total(before, "work_minutes")
        )
        assert place.price.metres / 1000 == pytest.approx(total(after, "km") - total(before, "km"))
        assert place.price.money == pytest.approx(after["cost"]["total"] - before["cost"]["total"])


def total(document, figure):
    return sum(day[figure] for day in document["shifts"])


def test_where_the_stop_is_costs_nothing_and_is_no_move():
    moves = price_moves(board(two_days(job("a"), job("b", "far"))), ((0, 1), ()), 1)
    (here,) = [place for place in moves.places if (place.shift, place.position) == moves.here]
    assert (here.price.work, here.price.metres, here.price.money) == (0, 0, 0)
    assert here not in moves.possible
    assert all(a.price.money <= b.price.money for a, b in pairwise(moves.possible))


def test_taking_a_stop_out_saves_its_drive_and_its_work_and_is_reckoned():
    problem = two_days(job("a"), job("b", "far", leave_out_cost=5000))
    moves = price_moves(board(problem), ((0,), (1,)), 1)
    assert (moves.out.work / 600, moves.out.metres) == (-180, -90_000)
    assert moves.out_cost == 5000


def test_a_stop_that_must_be_planned_cannot_be_taken_out():
    assert price_moves(board(two_days(job("a"))), ((0,), ()), 0).out is None


def test_a_stop_whose_farm_lies_on_the_only_quick_road_cannot_leave_its_day():
    """A typed table of travel may hold a road that is slower than the detour by a third farm."""
    problem = two_days(job("a"), job("b", "middle", leave_out_cost=9))
    problem["travel"]["minutes"][0][1] = 90
    problem["jobs"][0]["windows"] = [{"start": monday("07:00"), "end": monday("09:00")}]
    moves = price_moves(board(problem), ((1, 0), ()), 1)
    assert moves.out is None
    assert [p.why_not.rule for p in moves.places if p.shift == 1] == [Rule.LEFT_BEHIND]
    assert "cannot be driven without it" in say_why_not(moves.places[-1].why_not, board(problem), ["a", "b"])


def test_a_stop_that_is_left_out_can_be_put_in_anywhere():
    moves = price_moves(board(two_days(job("a", leave_out_cost=9), job("b"))), ((1,), ()), 0)
    assert (moves.here, moves.out) == (None, None)
    assert len(moves.possible) == 3


def test_a_day_that_has_begun_takes_no_stop_and_gives_none_up():
    known = board(two_days(job("a"), job("b")))
    assert price_moves(known, ((0,), (1,)), 0, closed=[0]).places == ()
    shut = [p for p in price_moves(known, ((0,), (1,)), 1, closed=[0]).places if p.shift == 0]
    assert [p.why_not.rule for p in shut] == ["begun", "begun"]


def test_a_week_of_forty_jobs_is_priced_well_within_the_time_of_a_page():
    """The page has 300 ms for reading, pricing and answering; pricing alone is held to half of it."""
    known = Board(read_problem(json.dumps(made_up_week(farms=40, vans=2, seed=3))))
    orders = insert_all(known, [()] * len(known.problem.shifts), range(len(known.problem.jobs)))
    placed = next(order[0] for order in orders if order)
    fresh = Board(known.problem)
    begun = time.perf_counter()
    price_moves(fresh, tuple(orders), placed)
    assert time.perf_counter() - begun < 0.15
