from dataclasses import replace
from datetime import date, timedelta

import pytest

from visits.domain.herd.change_counts import USUAL_CHANGE_RULE
from visits.domain.herd.change_flag import Counted, Counting, Direction, change_chart, false_alarms

SEEN, YEARS = Counting.OF_COWS_SEEN, Counting.OVER_COW_YEARS
QUICK = replace(USUAL_CHANGE_RULE, draws=300)
ROUND_DAYS = 120


def begun(number):
    return date(2022, 1, 1) + timedelta(days=number * ROUND_DAYS)


def chart(cases, exposure=120.0, counting=SEEN, rule=QUICK):
    counts = [Counted(begun(n), begun(n + 1), count, exposure) for n, count in enumerate(cases)]
    return change_chart(counts, counting, rule)


def flags(*cases, **how):
    return [(flag.direction, flag.since, flag.noticed) for flag in chart(cases, **how).flags]


def test_a_steady_farm_is_not_flagged():
    assert flags(14, 11, 17, 12, 15, 13, 10, 16, 12, 14) == []


def test_a_rise_is_flagged_when_it_is_noticed_and_told_since_when_it_goes_on():
    assert flags(12, 12, 12, 12, 21, 22, 24, 24) == [(Direction.RISEN, begun(4), begun(6))]


def test_a_rise_so_great_that_its_chance_is_hardly_above_0_is_told_once_and_from_its_own_round_on():
    rounds = [20] * 6 + [100] * 3
    assert flags(*rounds, exposure=200.0) == [(Direction.RISEN, begun(6), begun(6))]
    assert flags(*[round(n / 4) for n in rounds], counting=YEARS, exposure=0.5)[0][1] == begun(6)


def test_a_chance_of_0_to_the_last_digit_is_told_from_the_latest_begin():
    assert flags(*[200] * 6, *[9000] * 3, exposure=10_000.0) == [(Direction.RISEN, begun(6), begun(6))]


def test_a_fall_is_flagged_as_one():
    assert flags(30, 31, 29, 30, 10, 12) == [(Direction.FALLEN, begun(4), begun(4))]


def test_a_flag_tells_both_sums():
    (flag,) = chart([12, 12, 12, 12, 21, 22, 24]).flags
    assert (flag.before.cases, flag.before.exposure) == (48, 480)
    assert (flag.after.cases, flag.after.exposure) == (67, 360)
    assert (flag.before.start, flag.before.end, flag.after.end) == (begun(0), begun(4), begun(7))
    assert 0 < flag.chance <= QUICK.chance


def test_later_periods_do_not_take_a_flag_back():
    told = flags(12, 12, 12, 12, 40, 12, 12, 12)
    assert told[0] == (Direction.RISEN, begun(4), begun(4))


def test_after_a_rise_the_new_level_is_the_past_so_a_return_is_flagged_too():
    directions = [flag[0] for flag in flags(12, 12, 12, 12, 36, 38, 35, 37, 12, 12)]
    assert directions == [Direction.RISEN, Direction.FALLEN]
    assert chart([12, 12, 12, 36, 38, 12, 12]).standing.direction is Direction.FALLEN


def test_a_farm_whose_rounds_always_swing_is_not_flagged_for_one_more_swing():
    assert flags(10, 32, 14, 30, 9, 34, 11, 33, 40) == []
    assert flags(*[22] * 8, 40)[0][0] is Direction.RISEN


def test_cases_over_cow_years_are_flagged_too():
    assert flags(3, 2, 4, 3, 3, 14, counting=YEARS, exposure=25.0) == [(Direction.RISEN, begun(5), begun(5))]


def test_counts_on_more_cows_are_no_rise():
    counts = [
        Counted(begun(n), begun(n + 1), cases, seen)
        for n, (cases, seen) in enumerate([(6, 60)] * 4 + [(36, 360)])
    ]
    assert change_chart(counts, SEEN, QUICK).flags == ()


@pytest.mark.parametrize("cases", [[0] * 12, [0, 0, 1, 0, 0, 0, 2], [20, 80], []])
def test_with_too_few_cases_or_too_short_a_past_nothing_is_flagged_and_nothing_stated(cases):
    found = chart(cases)
    assert (found.flags, found.standing, found.stated_false_alarms) == ((), None, None)


def test_periods_without_cows_are_left_out_and_the_rest_put_in_order():
    counts = [Counted(begun(n), begun(n + 1), n, 10.0 * n) for n in (3, 0, 1, 2)]
    assert [point.cases for point in change_chart(counts, SEEN, QUICK).points] == [1, 2, 3]


@pytest.mark.parametrize(
    ("cases", "exposure", "counting"),
    [(-1, 10.0, SEEN), (11, 10.0, SEEN), (1, 10.5, SEEN), (1, 0.0, YEARS), (1, -1.0, YEARS)],
)
def test_counts_that_cannot_be_are_refused(cases, exposure, counting):
    with pytest.raises(ValueError, match="cannot be"):
        chart([cases], exposure, counting)


def test_the_stated_false_alarms_grow_with_the_periods_and_shrink_with_the_cases():
    rule = replace(USUAL_CHANGE_RULE, draws=2000)
    short, long = (false_alarms(5 * n, (25.0,) * n, YEARS, rule) for n in (8, 40))
    few = false_alarms(20, (25.0,) * 40, YEARS, rule)
    assert 0.01 < short < 0.05
    assert 0.1 < long < 0.22
    assert few < long


def test_the_same_counts_state_the_same():
    assert chart([12, 9, 14, 20, 11]) == chart([12, 9, 14, 20, 11])
