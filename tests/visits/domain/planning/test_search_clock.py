from visits.domain.planning.search_clock import SearchClock
from visits.domain.planning.solve_limits import SolveLimits


def test_steps_rule_where_they_are_given():
    share = SearchClock(SolveLimits(seconds=0.0, iterations=4)).until(0.0, 4, lambda: 1.0)
    assert [share(done) for done in range(5)] == [0, 0.25, 0.5, 0.75, 1]


def test_seconds_rule_otherwise():
    clock = SearchClock(SolveLimits(seconds=100))
    share = clock.until(50, 0, lambda: 1.0)
    clock.began -= 25
    assert 0.49 < share(10**6) < 0.51
    clock.began -= 30
    assert share(0) == 1


def test_a_stop_ends_every_stage_at_once():
    clock = SearchClock(SolveLimits(), should_stop=lambda: True)
    assert clock.until(10, 0, lambda: 1.0)(0) == 1


def test_progress_is_told_at_most_five_times_a_second():
    told = []
    clock = SearchClock(SolveLimits(), progress=lambda seconds, cost: told.append(cost))
    clock.began -= 1
    clock.tell(5.0)
    clock.tell(4.0)
    clock.tell(3.0, at_once=True)
    assert told == [5.0, 3.0]


def test_a_proof_gives_way_after_half_the_seconds_but_not_where_steps_rule():
    for limits, expected in ((SolveLimits(seconds=10), True), (SolveLimits(seconds=10, iterations=5), False)):
        clock = SearchClock(limits)
        assert not clock.half_gone
        clock.began -= 6
        assert clock.half_gone is expected
