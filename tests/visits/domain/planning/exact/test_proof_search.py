import pytest

from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.exact import proof_search
from visits.domain.planning.exact.proof_search import ProofSearch
from visits.domain.planning.exact.time_left import TimeLeft
from visits.domain.planning.exact.week_rows import weight_left_by
from visits.domain.planning.exact_small import best_week


@pytest.fixture
def halves():
    """Three shifts that each hold two of three jobs: the relaxed week takes halves, so it alone proves nothing."""
    days = [shift(id=f"s{at}", max_cows=20, cost_fixed=3000) for at in range(3)]
    jobs = [job("a", "near", cows=10), job("b", "middle", cows=10), job("c", "far", cows=10)]
    return board(week(*jobs, shifts=days))


def run(made, start, seconds=20):
    search = ProofSearch(made, start, TimeLeft(seconds))
    search.run()
    return search


def test_whole_days_close_what_the_relaxed_week_leaves_open(halves):
    search = run(halves, ((0,), (1,), (2,)))
    assert search.prices.bound < search.cost - 100
    assert search.closed
    assert search.cost == pytest.approx(halves.total(best_week(halves)))


def test_too_many_days_to_list_leave_the_bound_of_the_relaxed_week(halves, monkeypatch):
    monkeypatch.setattr(proof_search, "MOST_DAYS", 1)
    search = run(halves, ((0,), (1,), (2,)))
    assert not search.closed
    assert search.bound == search.prices.bound
    assert 0 < search.bound < halves.total(best_week(halves))


def test_a_week_that_does_more_ends_the_search_for_this_number(halves):
    search = run(halves, ((0,), (), ()))
    assert search.weight_falls == (weight_left_by(halves, search.week) < 8)
    assert search.bound <= search.cost


def test_without_time_nothing_is_claimed(halves):
    search = run(halves, ((0,), (1,), (2,)), seconds=0)
    assert (search.bound, search.closed) == (0, False)
