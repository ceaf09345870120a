"""Walks with no luck in them, worked out by hand; then what luck may and may not do."""

import math
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.arrival_windows.day_ahead import DayAhead, DayStop, Meal, Spread
from visits.domain.arrival_windows.walk_day import draw_common, opening, walk_day

STEADY = Spread(day_share=0.0, drive_spread=0.0, leave_late=0.0, leave_spread=0.0, meal_spread=0.0)
SURE = 1e-9
"""A spread so small that every draw is the mean."""


def stop(drive=20.0, minutes=100.0, spread=SURE, **changes):
    return DayStop(drive, minutes, spread, **changes)


def walk(*stops, leave=420.0, home=30.0, spread=STEADY, seed=1, **changes):
    return walk_day(DayAhead(leave, stops, home, **changes), spread, Random(seed))


def near(*minutes):
    return pytest.approx(minutes, abs=1e-4)


def test_stops_follow_each_other_with_their_drives():
    walked = walk(stop(), stop(drive=15, minutes=60))
    assert walked.arrive == near(440, 555)
    assert walked.finish == near(540, 615)
    assert walked.home == pytest.approx(645, abs=1e-4)


def test_an_early_van_waits_for_the_window_and_for_a_promised_hour():
    walked = walk(stop(windows=((480.0, 900.0),)), stop(not_before=700.0))
    assert walked.arrive == near(440, 600)
    assert walked.begin == near(480, 700)


def test_a_window_that_is_over_sends_the_work_into_the_next():
    assert opening(stop(windows=((300.0, 400.0), (500.0, 600.0))), 450) == 500
    assert opening(stop(windows=((300.0, 400.0),)), 450) == 450
    assert opening(stop(windows=((300.0, 400.0),)), 350) == 350


def test_the_meal_is_had_where_the_first_stop_after_its_hour_is_left():
    meal = Meal(30, 530, 840)
    walked = walk(stop(), stop(), stop(), meal=meal)
    assert walked.arrive == near(440, 540 + 30 + 20, 690 + 20)


def test_a_wait_that_is_long_enough_holds_the_meal():
    meal = Meal(30, 530, 840)
    walked = walk(stop(), stop(not_before=600.0), stop(), meal=meal)
    assert walked.begin == near(440, 600, 720)


def test_the_meal_comes_a_little_early_before_a_visit_that_lasts_past_it():
    meal = Meal(30, 545, 600)
    assert walk(stop(), stop(), meal=meal).arrive == near(440, 545 + 30 + 20)
    far_off = Meal(30, 570, 600)
    assert walk(stop(), stop(), meal=far_off).arrive == near(440, 560)


def test_the_meal_is_had_where_the_plan_has_room_for_it():
    assert walk(stop(), stop(), stop(), meal=Meal(30, 530, 840, before=2)).arrive == near(440, 560, 710)
    on_the_way_home = walk(stop(), stop(), meal=Meal(30, 530, 840, before=2))
    assert on_the_way_home.arrive == near(440, 560)
    assert on_the_way_home.home == pytest.approx(660 + 30 + 30, abs=1e-4)


def test_a_day_far_ahead_of_its_plan_does_not_wait_for_the_meal():
    walked = walk(stop(), stop(), stop(), meal=Meal(30, 600, 840, before=1))
    assert walked.arrive == near(440, 560, 660 + 30 + 20)


def test_who_comes_too_late_for_the_meal_eats_all_the_same():
    assert walk(stop(), stop(), meal=Meal(30, 450, 500)).arrive == near(440, 590)


def test_what_has_happened_is_kept_and_the_rest_follows_from_it():
    walked = walk(stop(begun=450.0, finished=600.0), stop(), now=605.0)
    assert walked.begin == near(450, 620)
    assert walked.home == pytest.approx(620 + 100 + 30, abs=1e-4)


def test_nobody_arrives_before_now():
    assert walk(stop(), now=500.0).arrive == near(500)


def test_a_gap_that_held_the_meal_is_not_eaten_in_again():
    begun = stop(begun=600.0, finished=700.0)
    walked = walk(stop(begun=440.0, finished=540.0), begun, stop(), now=700.0, meal=Meal(30, 530, 840))
    assert walked.arrive[2] == pytest.approx(720, abs=1e-4)


def test_a_visit_under_way_lasts_longer_than_it_has_lasted():
    wide = Spread(day_share=0.3)
    for seed in range(50):
        walked = walk(stop(minutes=100, spread=30, begun=440.0), spread=wide, seed=seed, now=590.0)
        assert walked.finish[0] > 590


def test_a_visit_far_beyond_its_length_is_still_given_an_end():
    walked = walk(stop(minutes=60, spread=5, begun=440.0), now=1000.0)
    assert 1000 < walked.finish[0] < 1200


def common_of(*lasted, share=0.5, draws=4000):
    chance = Random(4)
    done = [stop(minutes=100, spread=20, begun=0.0, finished=minutes) for minutes in lasted]
    drawn = [draw_common(done, Spread(day_share=share), chance) for _ in range(draws)]
    mean = sum(drawn) / draws
    return mean, sum((value - mean) ** 2 for value in drawn) / draws


def test_a_day_that_runs_slow_so_far_goes_on_slow():
    """Two scores of 1 with a common half: mean 2 sqrt(0.5) / (1 + 0.5), variance 0.5 / 1.5, by Bayes' formula."""
    mean, variance = common_of(120.0, 120.0)
    assert mean == pytest.approx(2 * math.sqrt(0.5) / 1.5, abs=0.05)
    assert variance == pytest.approx(1 / 3, abs=0.03)


def test_before_anything_is_finished_the_day_is_like_any_other():
    mean, variance = common_of()
    assert (mean, variance) == (pytest.approx(0, abs=0.06), pytest.approx(1, abs=0.08))


@given(
    seed=st.integers(0, 10_000),
    lengths=st.lists(st.floats(20, 300), min_size=1, max_size=6),
    spread=st.floats(1, 60),
)
def test_whatever_the_luck_time_runs_forward(seed, lengths, spread):
    stops = [stop(minutes=minutes, spread=spread, windows=((450.0, 1100.0),)) for minutes in lengths]
    walked = walk(*stops, spread=Spread(), seed=seed, meal=Meal(30, 690, 840))
    clock = 420.0
    for arrive, begin, finish in zip(walked.arrive, walked.begin, walked.finish, strict=True):
        assert clock < arrive <= begin < finish
        clock = finish
    assert walked.home > clock
