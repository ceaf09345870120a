from tests.visits.domain.planning.hand_made import board, job, shift, week, window
from visits.domain.planning.exact_small import best_week, can_follow
from visits.domain.planning.solve import SEARCH, solve
from visits.domain.planning.solve_limits import SolveLimits


def test_jobs_are_shared_out_over_the_shifts_at_the_least_total():
    days = [shift(), shift(id="m2", crew="ben", cost_per_work_hour=1200)]
    made = board(week(job("a", minutes=300), job("b", minutes=300), shifts=days))
    found = best_week(made)
    assert sorted(len(order) for order in found) == [1, 1]
    assert made.total(found) == 340 * 40 + 340 * 20 + 600


def test_the_cheap_shift_takes_all_it_can():
    days = [shift(), shift(id="m2", crew="ben", cost_per_work_hour=1200)]
    assert best_week(board(week(job("a"), job("b", "far"), shifts=days))) in [((), (0, 1)), ((), (1, 0))]


def test_a_week_without_shifts_or_jobs_is_empty():
    assert best_week(board(week())) == ((),)
    assert best_week(board(week(job("a")) | {"shifts": []})) == ()


def test_what_cannot_be_started_in_turn_ends_its_branch():
    made = board(week(job("a", minutes=120), job("b", windows=[window("07:00", "09:00")])))
    assert (can_follow(made, 0, (0, 1)), can_follow(made, 0, (1, 0))) == (False, True)


def test_it_gives_up_when_told_and_the_search_takes_over():
    assert best_week(board(week(job("a"))), lambda: True) is None
    stopped = solve(board(week(job("a"))).problem, limits=SolveLimits(), should_stop=lambda: True)
    assert (stopped.engine, stopped.bound, len(stopped.shifts)) == (SEARCH, None, 1)
