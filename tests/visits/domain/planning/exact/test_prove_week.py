import json
from math import inf

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.bench.planning.made_up_weeks import made_up_week
from tests.random_examples import examples
from tests.visits.domain.planning.brute_force import best_cost
from tests.visits.domain.planning.hand_made import board, job, shift, week
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.exact.prove_week import prove_week
from visits.domain.planning.exact.week_rows import document_cost, weight_left_by
from visits.domain.planning.exact_small import best_week
from visits.domain.planning.insertion import by_regret
from visits.domain.planning.read_problem import read_problem


def board_of(problem):
    return Board(read_problem(json.dumps(problem)))


def first_week(made):
    empty = [() for _ in made.problem.shifts]
    return tuple(by_regret(made, empty, set(range(len(made.problem.jobs)))))


def nothing(made):
    return tuple(() for _ in made.problem.shifts)


@given(small_weeks())
@settings(max_examples=examples(200), deadline=None)
def test_the_bound_is_never_above_the_best_and_a_closed_week_is_the_best(problem):
    made = board_of(problem)
    best = best_week(made)
    proof = prove_week(made, first_week(made), 20)
    assert made.total(proof.week) >= made.total(best) - 1e-6
    if weight_left_by(made, proof.week) == weight_left_by(made, best):
        assert proof.bound <= document_cost(made, best) + 1e-6
    if proof.closed:
        assert made.total(proof.week) == pytest.approx(made.total(best), abs=1e-3)
        assert proof.bound == pytest.approx(document_cost(made, best), abs=1e-4)


@given(small_weeks())
@settings(max_examples=examples(60), deadline=None)
def test_from_an_empty_week_too_the_proof_is_right(problem):
    made = board_of(problem)
    best = best_week(made)
    proof = prove_week(made, nothing(made), 20)
    assert made.total(proof.week) >= made.total(best) - 1e-6
    assert proof.bound <= document_cost(made, best) + 1e-6
    if proof.closed:
        assert made.total(proof.week) == pytest.approx(made.total(best), abs=1e-3)


@given(small_weeks(most_jobs=4))
@settings(max_examples=25, deadline=None)
def test_a_closed_week_costs_what_trying_everything_finds(problem):
    made = board_of(problem)
    proof = prove_week(made, first_week(made), 20)
    if proof.closed:
        assert round(document_cost(made, proof.week), 4) == pytest.approx(best_cost(problem)[2], abs=1e-3)


def test_a_week_without_jobs_or_without_shifts_is_its_own_proof():
    assert prove_week(board(week()), ((),), 1)[:3] == (((),), 0, True)
    bare = board(week(job("a", leave_out_cost=700)) | {"shifts": []})
    assert prove_week(bare, (), 1)[:3] == ((), 700, True)


def test_where_nothing_costs_anything_any_full_week_is_the_best():
    free = shift(cost_per_work_hour=0, cost_per_km=0)
    made = board(week(job("a"), job("b", "far"), shifts=[free]))
    proof = prove_week(made, ((),), 20)
    assert (proof.bound, proof.closed, sorted(proof.week[0])) == (0, True, [0, 1])


def test_a_job_that_nobody_can_take_does_not_hinder_the_proof():
    made = board(week(job("a"), job("b", crews=["nobody"])))
    proof = prove_week(made, ((0,),), 20)
    assert (proof.week, proof.closed) == (((0,),), True)
    assert proof.bound == pytest.approx(made.cost(0, (0,)))


def test_more_jobs_that_must_be_done_are_found_and_proven_to_be_the_most():
    made = board(week(job("a", minutes=500), job("b", minutes=120), job("c", "middle", minutes=120)))
    proof = prove_week(made, ((0,),), 20)
    assert (sorted(proof.week[0]), proof.closed) == ([1, 2], True)


def test_without_time_the_start_comes_back_and_nothing_is_claimed():
    made = board(week(job("a"), job("b", "far")))
    assert prove_week(made, ((1, 0),), 0)[:3] == (((1, 0),), 0, False)


def test_too_many_jobs_are_not_tried():
    made = board(week(*(job(f"j{at}", minutes=1) for at in range(65))))
    assert prove_week(made, ((),), 10).columns == 0


def test_days_known_beforehand_are_used():
    made = board(week(job("a"), job("b", "far"), job("c", "middle")))
    known = {(0, frozenset({0, 1, 2})): (made.cost(0, (0, 2, 1)), (0, 2, 1))}
    assert prove_week(made, ((1, 0, 2),), 20, pool=known).closed


@pytest.fixture(scope="module")
def twelve():
    """A made week of twelve farms, a first week and the proof."""
    made = board_of(made_up_week(12, 1, 1))
    start = first_week(made)
    return made, start, prove_week(made, start, 60)


def test_a_working_week_of_twelve_farms_is_proven(twelve):
    made, start, proof = twelve
    assert proof.closed
    assert made.total(proof.week) <= made.total(start)
    assert proof.bound == pytest.approx(made.total(proof.week))


def test_the_proof_holds_from_any_start(twelve):
    made, _, proof = twelve
    other = prove_week(made, nothing(made), 60)
    assert other.closed
    assert made.total(other.week) == pytest.approx(made.total(proof.week))


@given(small_weeks(), st.randoms(use_true_random=False))
@settings(max_examples=examples(80), deadline=None)
def test_from_days_in_a_poor_order_the_proof_is_right(problem, chance):
    made = board_of(problem)
    best = best_week(made)
    shuffled = tuple(tuple(chance.sample(order, len(order))) for order in best)
    start = tuple(order if made.cost(at, order) < inf else () for at, order in enumerate(shuffled))
    proof = prove_week(board_of(problem), start, 20)
    assert proof.bound <= document_cost(made, best) + 1e-6
    assert proof.closed
    assert made.total(proof.week) == pytest.approx(made.total(best), abs=1e-3)


MADE = board(week(job("a"), job("b", "far"), job("c", "middle")))


def test_the_proven_week_costs_its_bound():
    proof = prove_week(MADE, ((2, 1, 0),), 20)
    assert proof.closed
    assert proof.bound == pytest.approx(MADE.total(best_week(MADE)))
    assert MADE.total(proof.week) == pytest.approx(proof.bound)
    assert proof.columns > 0


def test_without_time_there_is_no_proof_and_the_bound_claims_nothing():
    proof = prove_week(MADE, ((2, 1, 0),), 0)
    assert not proof.closed
    assert proof.bound == 0
