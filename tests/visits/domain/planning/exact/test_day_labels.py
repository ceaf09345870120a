import json

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from tests.visits.domain.planning.exact.priced_days import completed, found_sets, reduced, searched
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.exact import day_labels, label_store
from visits.domain.planning.read_problem import read_problem

PRICES = st.lists(st.sampled_from([0.0, 100.0, 900.0, 4000.0, 25000.0]), min_size=5, max_size=5)
MEAL = {"minutes": 60, "earliest": monday("11:00"), "latest": monday("13:00")}


@given(small_weeks(), PRICES)
@settings(max_examples=examples(120), deadline=None)
def test_the_least_cost_after_prices_is_that_of_trying_every_day(problem, prices):
    made = Board(read_problem(json.dumps(problem)))
    all_days = reduced(made, prices)
    for at in range(len(made.problem.shifts)):
        least = min([cost for (each, _), cost in all_days.items() if each == at], default=np.inf)
        found, _ = searched(made, at, prices, 1e12, label_store.STRICT)
        assert found == pytest.approx(least, abs=1e-5)


@given(small_weeks(), PRICES, st.sampled_from([-3000.0, 0.0, 500.0, 1e12]))
@settings(max_examples=examples(120), deadline=None)
def test_every_set_of_jobs_below_the_limit_is_found_at_its_least_cost(problem, prices, limit):
    made = Board(read_problem(json.dumps(problem)))
    all_days = reduced(made, prices)
    for at in range(len(made.problem.shifts)):
        _, search = searched(made, at, prices, limit, label_store.EVERY)
        found = found_sets(search)
        expected = {
            jobs: cost for (each, jobs), cost in all_days.items() if each == at and cost < limit - 1e-5
        }
        assert search.counts[label_store.FULL] == 0
        for jobs, cost in expected.items():
            assert found[jobs] == pytest.approx(cost, abs=1e-5)
        for jobs, cost in found.items():
            assert cost == pytest.approx(all_days[at, jobs], abs=1e-5)


def least(made, prices):
    return searched(made, 0, prices, 1e12, label_store.STRICT)[0]


@pytest.mark.parametrize(
    ("opens", "closes", "changes"),
    [
        ("07:00", "17:30", {}),  # eaten at the farm or at home
        ("10:00", "12:00", {}),  # back just in time to eat at home, or eaten before the work
        ("12:00", "13:00", {}),  # only a meal before leaving or after returning
        ("15:00", "17:00", {}),  # gone after the meal time
        ("07:00", "09:00", {}),  # back before it
        ("10:00", "12:00", {"max_work_minutes": 100}),  # the meal away would be too long
        ("16:10", "17:10", {"end": monday("17:30")}),
    ],
)
def test_the_meal_is_where_the_exact_timing_puts_it(opens, closes, changes):
    made = board(week(job("a", windows=[window(opens, closes)]), shifts=[shift(meal=MEAL, **changes)]))
    cost = made.cost(0, (0,))
    assert (
        least(made, [0.0]) == pytest.approx(cost, abs=1e-6) if cost < np.inf else least(made, [0.0]) == np.inf
    )


def test_a_later_window_is_taken_where_the_wait_for_the_first_costs_more():
    windows = [window("07:20", "08:20"), window("12:00", "13:00")]
    made = board(week(job("a", windows=windows), job("b", "middle", windows=[window("13:20", "14:20")])))
    assert least(made, [1e5, 1e5]) == pytest.approx(made.cost(0, (0, 1)) - 2e5)


def test_with_too_little_room_the_search_says_so():
    made = board(week(*(job(f"j{at}", minutes=10) for at in range(6))))
    day, back = completed(made, 0, [9e4] * 6)
    search = label_store.new_search(6, 20, 5_000, 5_000, label_store.STRICT)
    day_labels.run(day, search, back, np.full(6, 9e4), 0.0)
    assert search.counts[label_store.FULL] == 1
