from visits.domain.planning.solve_limits import SolveLimits


def test_ten_seconds_and_the_first_seed_unless_told_otherwise():
    assert (SolveLimits().seconds, SolveLimits().seed, SolveLimits().iterations) == (10.0, 1, None)
