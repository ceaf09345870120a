import pytest

from tests.visits.domain.planning.hand_made import board, job, week
from visits.domain.planning.exact.lower_bound import lower_bound
from visits.domain.planning.exact_small import best_week

MADE = board(week(job("a"), job("b", "far"), job("c", "middle")))


def test_the_proven_week_costs_its_bound():
    bound = lower_bound(MADE, ((2, 1, 0),), seconds=20)
    assert bound.value == pytest.approx(MADE.total(best_week(MADE)))
    assert MADE.total(bound.proven_week) == pytest.approx(bound.value)
    assert bound.columns > 0
    assert 0 < bound.seconds < 60


def test_without_time_there_is_no_proof_and_the_bound_claims_nothing():
    bound = lower_bound(MADE, ((2, 1, 0),), seconds=0)
    assert bound.proven_week is None
    assert bound.value == 0
