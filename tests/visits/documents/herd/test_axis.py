from datetime import date

import pytest

from visits.documents.herd.axis import (
    Scale,
    figure,
    interval_words,
    month,
    month_ticks,
    tick_words,
    ticks,
    top_of,
)
from visits.documents.herd_story_content import Reading


def test_a_value_beyond_the_scale_lies_at_its_edge_and_is_told():
    scale = Scale(0, 50, 40, 0)
    assert [scale.at(value) for value in (0, 25, 50, 80, -3)] == [40, 20, 0, 0, 40]
    assert scale.goes_on(50.1)
    assert not scale.goes_on(50)


@pytest.mark.parametrize(
    ("readings", "top"),
    [
        ([Reading(10, 5, 18), Reading(12, 8, 16)], 18),
        ([Reading(10, 5, 18), Reading(8, 0, 90)], 30),
        ([Reading(0, 0, 56)], 56),
        ([Reading(40)], 40),
        ([Reading(0)], 1),
        ([], 1),
    ],
)
def test_the_axis_reaches_to_every_figure_but_not_to_the_end_of_an_endless_interval(readings, top):
    assert top_of(readings) == top


@pytest.mark.parametrize("top", [0.013, 0.7, 1, 3, 9.9, 10, 41, 77, 99.9, 100, 101, 365, 4031])
@pytest.mark.parametrize("most", [3, 4])
def test_ticks_are_few_round_and_just_reach_the_top(top, most):
    found = ticks(top, most)
    assert found[0] == 0
    assert len(found) <= most + 1
    assert found[-2] < top <= found[-1]


@pytest.mark.parametrize("share", [81, 90, 99.9, 100])
def test_an_axis_of_shares_never_reaches_over_a_hundred(share):
    assert ticks(share)[-1] == 100


@pytest.mark.parametrize(
    ("value", "words"), [(0, "0"), (0.42, "0.4"), (9, "9"), (9.94, "9.9"), (9.96, "10"), (1236.4, "1,236")]
)
def test_a_figure_below_ten_has_a_decimal(value, words):
    assert figure(value) == words


def test_ticks_are_written_without_idle_zeros():
    assert [tick_words(tick) for tick in ticks(10)] == ["0", "2.5", "5", "7.5", "10"]


@pytest.mark.parametrize(
    ("reading", "words"),
    [
        (Reading(12.2, 7.14, 20.3), "12 (7 to 20)"),
        (Reading(3.2, 2.61, 3.88), "3.2 (2.6 to 3.9)"),
        (Reading(14), "14"),
    ],
)
def test_an_interval_is_as_exact_as_its_figure(reading, words):
    assert interval_words(reading) == words


def test_a_month_is_written_with_its_year():
    assert month(date(2026, 3, 14)) == "Mar 2026"


@pytest.mark.parametrize(
    ("first", "last", "most", "expected"),
    [
        (date(2026, 1, 20), date(2026, 4, 3), 3, ["Feb 2026", "Mar 2026", "Apr 2026"]),
        (date(2025, 11, 2), date(2026, 9, 1), 3, ["Jan 2026", "Apr 2026", "Jul 2026"]),
        (date(2023, 3, 1), date(2026, 3, 1), 3, ["2024", "2025", "2026"]),
        (date(2016, 1, 5), date(2025, 10, 5), 3, ["2018", "2020", "2022", "2024"]),
        (date(2026, 3, 2), date(2026, 3, 9), 3, []),
    ],
)
def test_days_are_marked_at_firsts_of_months_and_far_apart_ones_at_new_years(first, last, most, expected):
    found = month_ticks(first, last, most)
    assert [words for _, words in found] == expected
    assert all(day.day == 1 and first <= day <= last for day, _ in found)
