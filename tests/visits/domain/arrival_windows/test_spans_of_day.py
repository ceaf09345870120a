import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import norm

from visits.domain.arrival_windows.day_ahead import DayAhead, DayStop, Spread
from visits.domain.arrival_windows.spans_of_day import spans_of_day

STEADY = Spread(day_share=0.0, drive_spread=0.0, leave_late=0.0, leave_spread=0.0, meal_spread=0.0)


def day_of(*stops, leave=420.0, **changes):
    return DayAhead(leave, stops, 30.0, **changes)


def test_with_one_source_of_luck_the_span_is_that_of_the_normal_curve():
    """Finish = 440 + N(100, 20): the 10th and 90th percentile by scipy."""
    spans = spans_of_day(day_of(DayStop(20, 100, 20)), STEADY, draws=8000)
    low, high = norm.ppf([0.1, 0.9], 540, 20)
    assert spans.stops[0].finish.low == pytest.approx(low, abs=1.2)
    assert spans.stops[0].finish.high == pytest.approx(high, abs=1.2)
    assert spans.home.middle == pytest.approx(570, abs=1)


@pytest.mark.parametrize("closes", [520.0, 540.0, 570.0])
def test_the_chance_to_be_done_in_time_is_that_of_the_normal_curve_of_scipy(closes):
    stop = DayStop(20, 100, 20, done_by=closes)
    found = spans_of_day(day_of(stop), STEADY, draws=8000).stops[0].done_in_time
    assert found == pytest.approx(norm.cdf(closes, 540, 20), abs=0.02)


def test_where_nobody_waits_for_the_cows_there_is_no_chance_to_tell():
    assert spans_of_day(day_of(DayStop(20, 100, 20)), STEADY, draws=10).stops[0].done_in_time is None


def test_two_visits_spread_as_the_root_of_their_squares_and_wider_when_they_go_together():
    stops = (DayStop(20, 100, 20), DayStop(20, 100, 20))
    apart = spans_of_day(day_of(*stops), STEADY, draws=6000).stops[1].finish
    together = spans_of_day(day_of(*stops), Spread(**{**vars(STEADY), "day_share": 0.5}), draws=6000)
    assert (apart.high - apart.low) / 2.563 == pytest.approx(20 * 2**0.5, rel=0.05)
    wide = together.stops[1].finish
    assert (wide.high - wide.low) / 2.563 == pytest.approx(20 * 3**0.5, rel=0.05)


def test_four_in_five_of_new_draws_lie_within_the_span():
    day = day_of(DayStop(20, 100, 20), DayStop(30, 80, 15, windows=((500.0, 900.0),)))
    told = spans_of_day(day, Spread(), seed=1).stops[1].arrive
    fresh = [
        spans_of_day(day, Spread(), seed=seed, draws=1).stops[1].arrive.middle for seed in range(2, 1500)
    ]
    held = sum(told.low <= at <= told.high for at in fresh) / len(fresh)
    assert held == pytest.approx(0.8, abs=0.04)


def test_a_real_finish_narrows_what_follows():
    before = day_of(DayStop(20, 100, 20), DayStop(30, 80, 15))
    after = day_of(DayStop(20, 100, 20, begun=440.0, finished=560.0), DayStop(30, 80, 15), now=560.0)
    wide, narrow = (spans_of_day(day, Spread()).stops[1].arrive for day in (before, after))
    assert narrow.high - narrow.low < (wide.high - wide.low) / 2
    assert narrow.middle == pytest.approx(590, abs=2)


def test_the_same_seed_gives_the_same_spans():
    day = day_of(DayStop(20, 100, 20))
    assert spans_of_day(day, Spread(), seed=7) == spans_of_day(day, Spread(), seed=7)
    assert spans_of_day(day, Spread(), seed=7) != spans_of_day(day, Spread(), seed=8)


@settings(max_examples=25)
@given(minutes=st.lists(st.floats(30, 200), min_size=1, max_size=5), spread=st.floats(1, 40))
def test_spans_are_in_order_and_chances_are_chances(minutes, spread):
    stops = [DayStop(15, length, spread, windows=((430.0, 900.0),), done_by=700.0) for length in minutes]
    for found in spans_of_day(day_of(*stops), Spread(), draws=60).stops:
        for likely in (found.arrive, found.begin, found.finish):
            assert likely.low <= likely.middle <= likely.high
        assert found.arrive.middle <= found.begin.middle < found.finish.middle
        assert 0 <= found.done_in_time <= 1
