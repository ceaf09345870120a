from decimal import Decimal

import pytest

from visits.domain.herd.case_costs import (
    CASE_COSTS,
    CHA,
    STUDIES,
    WILLSHIRE_BELL,
    cost_range,
    cost_ranges,
)
from visits.domain.lesions import LesionCode


def test_cases_cost_what_the_study_says_of_one():
    found = cost_range({LesionCode.SU: 2, LesionCode.DD: 3})
    assert found.low == found.high == 2 * Decimal("518.73") + 3 * Decimal("75.57")
    assert (found.study, found.priced, found.averaged, found.unpriced) == (WILLSHIRE_BELL, 5, 0, 0)


def test_painful_cases_without_a_figure_of_their_own_reach_from_nothing_to_the_average():
    found = cost_range({LesionCode.DD: 1, LesionCode.IP: 2})
    assert (found.low, found.high) == (Decimal("75.57"), Decimal("75.57") + 2 * Decimal("323.47"))
    assert (found.priced, found.averaged) == (1, 2)


def test_cases_that_are_seldom_lame_are_told_and_not_priced():
    found = cost_range({LesionCode.DD: 1, LesionCode.SH: 20, LesionCode.HHE: 9})
    assert found.high == Decimal("75.57")
    assert found.unpriced == 29


def test_without_an_average_nothing_is_added():
    found = cost_range({LesionCode.IP: 1, LesionCode.TN: 4}, CHA)
    assert (found.low, found.high, found.unpriced) == (Decimal("120.70"), Decimal("120.70"), 4)


def test_an_ulcer_is_priced_as_a_sole_ulcer_and_an_abscess_as_the_white_line():
    assert cost_range({LesionCode.U: 1}).low == Decimal("518.73")
    assert cost_range({LesionCode.WLA: 1}).low == Decimal("300.05")


@pytest.mark.parametrize("cases", [{}, {LesionCode.SH: 4}, {LesionCode.IP: 3}])
def test_when_no_case_has_a_figure_of_its_own_there_is_no_range(cases):
    assert cost_range(cases) is None


def test_each_study_stands_by_itself_the_countrys_own_first():
    cases = {LesionCode.SU: 1, LesionCode.IP: 1}
    assert [each.study for each in cost_ranges(cases, "US")] == [CHA, WILLSHIRE_BELL]
    assert [each.study for each in cost_ranges(cases)] == [WILLSHIRE_BELL, CHA]
    assert cost_ranges({LesionCode.AC: 1}) == ()


def test_cases_below_none_are_refused():
    with pytest.raises(ValueError, match="cannot be"):
        cost_range({LesionCode.SU: -1})


def test_no_cost_stands_without_a_study_its_year_and_whether_it_was_read():
    assert {cost.study for cost in CASE_COSTS} == set(STUDIES)
    assert {(study.year, study.currency, study.tag) for study in STUDIES} == {
        (2009, "GBP", "from memory"),
        (2010, "USD", "from memory"),
    }
    assert all(cost.low <= cost.high for cost in CASE_COSTS)
