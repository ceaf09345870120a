import pytest
from hypothesis import HealthCheck, given, settings

from tests.bench.planning.made_up_weeks import made_up_week
from tests.random_examples import examples
from tests.visits.domain.planning.small_weeks import small_weeks
from tests.visits.domain.planning.swift.machine_weeks import at_the_desk, empty_orders, present_week
from visits.domain.planning.exact_small import best_week
from visits.domain.planning.swift.machine_search import go_on, load

SLOW = [HealthCheck.too_slow, HealthCheck.data_too_large]


@settings(max_examples=examples(60), deadline=None, derandomize=True, suppress_health_check=SLOW)
@given(small_weeks(most_jobs=6))
def test_the_search_alone_finds_the_proven_best_of_small_weeks(problem):
    board, arrays, desk = at_the_desk(problem)
    load(arrays, desk, *empty_orders(board))
    go_on(arrays, desk, 3000, 2000.0, 10.0)
    assert desk.money[1] == pytest.approx(board.total(best_week(board)), abs=0.01)


def test_sums_hold_after_many_steps():
    board, arrays, desk = at_the_desk(made_up_week(40, 2, 7))
    load(arrays, desk, *empty_orders(board))
    for _ in range(20):
        go_on(arrays, desk, 20, 3000.0, 3000.0)
        week = present_week(desk)
        assert desk.money[0] == pytest.approx(board.total(week), abs=1e-3)
        assert sorted(job for order in week for job in order) == sorted(
            job for job in range(40) if desk.home[job] >= 0
        )
        assert all(desk.home[job] == at for at, order in enumerate(week) for job in order)


def test_the_same_seed_takes_the_same_way():
    ends = []
    for seed in (3, 3, 4):
        board, arrays, desk = at_the_desk(made_up_week(30, 1, 2), seed)
        load(arrays, desk, *empty_orders(board))
        go_on(arrays, desk, 200, 3000.0, 30.0)
        ends.append((float(desk.money[0]), present_week(desk)))
    assert ends[0] == ends[1]
    assert ends[0] != ends[2]
