import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.herd.two_groups import TwoGroups

CELL = st.integers(0, 60)


def test_the_figures_of_a_table_are_those_worked_out_by_hand():
    found = TwoGroups(10, 10, 5, 15)
    assert found.relative_risk == pytest.approx(2.0)
    assert found.odds_ratio == pytest.approx(3.0)
    assert found.risk_difference == pytest.approx(0.25)
    assert found.needed_to_treat == pytest.approx(4.0)
    assert found.chi_square == pytest.approx(40 * 100**2 / (20 * 20 * 15 * 25))


def test_without_the_outcome_in_the_other_group_there_is_no_ratio_but_a_difference():
    found = TwoGroups(4, 6, 0, 10)
    assert found.has_zero_cell
    assert (found.relative_risk, found.relative_risk_interval) == (None, None)
    assert (found.odds_ratio, found.odds_ratio_interval) == (None, None)
    assert found.risk_difference_interval.holds(0.4)
    assert 0 < found.fisher_p < 0.1


def test_without_the_outcome_in_the_first_group_the_ratio_is_none_at_all_and_has_no_interval():
    found = TwoGroups(0, 10, 4, 6)
    assert (found.relative_risk, found.odds_ratio) == (0.0, 0.0)
    assert (found.relative_risk_interval, found.odds_ratio_interval) == (None, None)


def test_when_every_cow_of_the_first_group_had_it_the_risks_still_compare():
    found = TwoGroups(10, 0, 5, 5)
    assert found.relative_risk == pytest.approx(2.0)
    assert found.relative_risk_interval.holds(2.0)
    assert found.odds_ratio is None


def test_when_no_cow_at_all_had_it_nothing_is_found():
    found = TwoGroups(0, 12, 0, 30)
    assert (found.chi_square, found.chi_square_p, found.needed_to_treat) == (None, None, None)
    assert found.fisher_p == 1.0
    assert found.risk_difference_interval.holds(0.0)


def test_the_number_needed_has_bounds_only_when_there_is_a_difference():
    assert TwoGroups(14, 25, 11, 34).needed_to_treat_interval is None
    found = TwoGroups(23, 18, 11, 34)
    assert found.needed_to_treat_interval.holds(found.needed_to_treat)
    fewer = TwoGroups(11, 34, 23, 18)
    assert fewer.needed_to_treat == pytest.approx(-found.needed_to_treat)
    assert (
        fewer.needed_to_treat_interval.low < fewer.needed_to_treat < fewer.needed_to_treat_interval.high < 0
    )


def test_the_difference_shown_is_wider_than_the_simple_one_where_cows_are_few_and_all_alike():
    found = TwoGroups(5, 0, 0, 5)
    simple, shown = found.simple_difference_interval, found.risk_difference_interval
    assert (simple.low, simple.high) == (1.0, 1.0)
    assert shown.low < 0.6


@pytest.mark.parametrize("table", [(-1, 2, 3, 4), (0, 0, 3, 4), (3, 4, 0, 0)])
def test_tables_that_cannot_be_are_refused(table):
    with pytest.raises(ValueError, match=r"cannot be"):
        TwoGroups(*table)


@given(CELL, CELL, CELL, CELL)
def test_the_groups_may_change_places(a, b, c, d):
    if not (a + b and c + d):
        return
    one, two = TwoGroups(a, b, c, d), TwoGroups(c, d, a, b)
    assert 0 < one.fisher_p <= 1
    assert two.fisher_p == pytest.approx(one.fisher_p)
    assert two.risk_difference == pytest.approx(-one.risk_difference)
    if one.relative_risk and two.relative_risk:
        assert two.relative_risk == pytest.approx(1 / one.relative_risk)
        assert two.relative_risk_interval.low == pytest.approx(1 / one.relative_risk_interval.high)
