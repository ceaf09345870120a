import math

import pytest

from visits.domain.herd.intervals import wilson
from visits.domain.herd.survival_curve import Followed, Median, SurvivalStep, survival_curve


def curve(text):
    """ "3 5+ 8": times, with a plus where no event was seen."""
    return survival_curve(Followed(float(word.strip("+")), not word.endswith("+")) for word in text.split())


def test_the_share_falls_at_each_event_by_those_at_risk():
    """By hand: 1 of 5 on day 3; the one censored on day 5 is still at risk on it, so 1 of 4; then 1 of 2."""
    found = curve("3 5 5+ 8 9+")
    assert [(step.day, step.at_risk, step.events) for step in found.steps] == [
        (3, 5, 1),
        (5, 4, 1),
        (8, 2, 1),
    ]
    assert [step.survival for step in found.steps] == pytest.approx([0.8, 0.6, 0.3])


def test_the_interval_is_greenwoods_on_the_log_log_scale():
    step = curve("3 5 5+ 8 9+").steps[1]
    error = math.sqrt(1 / (5 * 4) + 1 / (4 * 3)) / abs(math.log(0.6))
    low, high = (0.6 ** math.exp(sign * 1.959963984540054 * error) for sign in (1, -1))
    assert (step.low, step.high) == pytest.approx((low, high))


def test_when_all_had_it_the_upper_bound_of_the_step_before_is_kept():
    before, last = curve("3 5 8").steps[1:]
    assert (last.survival, last.low, last.high) == (0, 0, before.high)
    assert curve("3 3").steps[0].high == 1


@pytest.mark.parametrize(
    ("times", "median"),
    [
        ("3 5 7+ 9+", 5),
        ("3 5+ 7+ 9+", None),
        ("1 2 3 4 5 6 7 8 9 10", 5),
        ("", None),
    ],
)
def test_the_median_is_the_first_day_by_which_half_had_it(times, median):
    found = curve(times).median
    assert (found and found.day) == median


def test_a_bound_of_the_median_is_open_while_its_curve_stays_above_half():
    found = curve("1 2 3 4 5 6 7 8 9+ 10+ 11+").median
    assert isinstance(found, Median)
    assert found.low < found.day
    assert found.high is None


def test_the_share_on_a_day_is_that_of_the_last_event_up_to_it():
    found = curve("3 5 8+")
    assert [found.at(day).survival for day in (0, 2, 3, 4, 5, 8)] == pytest.approx(
        [1, 1, 2 / 3, 2 / 3, 1 / 3, 1 / 3]
    )


def test_before_the_first_event_the_share_is_1_with_the_doubt_of_those_still_followed():
    found = curve("2+ 5+ 60 61+ 90+")
    assert found.at(30) == SurvivalStep(30, 3, 0, 1.0, wilson(3, 3).low, 1.0)
    assert found.at(30).low < 0.5
    assert curve("5+ 6+").at(6).low == wilson(1, 1).low


def test_nothing_is_told_of_days_up_to_which_nobody_was_followed():
    assert curve("3 5 8+").at(9) is None
    assert curve("").at(1) is None
    assert curve("").followed_until == 0


def test_how_many_were_followed_counts_those_that_ended_that_day():
    found = curve("3 5 5+ 8 9+")
    assert [found.at_risk(day) for day in (0, 3, 5, 6, 10)] == [5, 5, 4, 2, 0]
    assert found.events == 3


def test_a_negative_time_is_refused():
    with pytest.raises(ValueError, match="-1"):
        curve("-1 3")
