import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.arrival_windows.visit_so_far import Expected, SoFar, visit_so_far

USUAL = Expected(before=30, at_crush=200, after=30, cows=20, spread=40)


def test_before_the_first_cow_it_is_as_expected():
    assert visit_so_far(USUAL, SoFar(0, 0)) == (260, 40)


def test_a_visit_that_runs_as_expected_ends_as_expected_and_more_surely():
    minutes, spread = visit_so_far(USUAL, SoFar(10, 130))
    assert minutes == pytest.approx(260)
    assert spread < 40


def test_a_slow_half_makes_the_rest_slow_by_the_formula_of_the_book():
    """Ratio 1.5 over ten cows; it pulls by p / (p + 0.3^2 / 10), p half of 0.154^2."""
    minutes, _ = visit_so_far(USUAL, SoFar(10, 195))
    pace, few = (40 / 260) ** 2 / 2, 0.09 / 10
    assert minutes == pytest.approx(195 + 130 * 1.5 ** (pace / (pace + few)))


def test_more_cows_than_were_asked_for_leave_only_what_comes_after():
    minutes, spread = visit_so_far(USUAL, SoFar(25, 280))
    assert 300 < minutes < 320
    assert spread < 15


@pytest.mark.parametrize("bad", [SoFar(3, -1), SoFar(-1, 3)])
def test_a_visit_cannot_end_before_it_began(bad):
    with pytest.raises(ValueError, match="before it began"):
        visit_so_far(USUAL, bad)


@given(cows=st.integers(1, 60), minutes=st.floats(1, 800), asked=st.integers(1, 60), spread=st.floats(1, 90))
def test_it_never_ends_before_the_last_cow_and_the_spread_is_positive(cows, minutes, asked, spread):
    total, doubt = visit_so_far(Expected(30, 8 * asked, 25, asked, spread), SoFar(cows, minutes))
    assert total > minutes
    assert doubt > 0


@given(minutes=st.floats(20, 400), more=st.floats(1, 200), cows=st.integers(1, 20))
def test_the_later_the_cows_so_far_the_later_the_end(minutes, more, cows):
    assert visit_so_far(USUAL, SoFar(cows, minutes))[0] < visit_so_far(USUAL, SoFar(cows, minutes + more))[0]
