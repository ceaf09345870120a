import pytest

from visits.domain.kit.forecast.head_drift import CALLED_OFF, WORTH, Heads, learn_heads


def mean(cows):
    return sum(number * chance for number, chance in cows.items())


def test_before_anything_was_seen_most_visits_are_as_booked():
    drift = learn_heads([])
    for booked in (1, 4, 30):
        cows = drift.cows(booked)
        assert sum(cows.values()) == pytest.approx(1)
        assert cows[booked] > 0.5
        assert cows[0] == CALLED_OFF
    assert mean(drift.cows(30)) == pytest.approx(30 * (1 - CALLED_OFF))


def test_a_business_to_which_more_come_is_told_more():
    """Forty visits of 30 cows to which 36 came, and forty of two to which three came."""
    drift = learn_heads([Heads(30, 36, 1.0), Heads(2, 3, 1.0)] * 40)
    assert drift.cows(20)[24] > 0.8
    assert drift.cows(5)[6] > 0.8


def test_visits_that_are_called_off_are_learned_after_a_usual_share():
    drift = learn_heads([Heads(10, None, 1.0)] * 20 + [Heads(10, 10, 1.0)] * 60)
    assert drift.called_off == pytest.approx((20 + WORTH * CALLED_OFF) / (80 + WORTH))


def test_a_visit_that_is_made_has_a_cow_at_least_and_none_has_none():
    drift = learn_heads([Heads(5, 1, 1.0)] * 30)
    assert set(drift.cows(1)) <= {0, 1, 2}
    assert drift.cows(1)[0] == drift.called_off
    assert drift.cows(0) == {0: 1.0}


def test_older_visits_weigh_less():
    drift = learn_heads([Heads(30, 36, 9.0), Heads(30, 24, 1.0)])
    assert drift.cows(30)[36] > drift.cows(30)[24]
