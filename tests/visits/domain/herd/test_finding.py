from datetime import date

import pytest

from visits.domain.herd.finding import FindingKind, between, calendar_year, figure, of_seen, year_up_to
from visits.domain.herd.intervals import Interval


def test_the_year_up_to_a_day_holds_that_day_and_begins_the_day_after_it_a_year_before():
    period = year_up_to(date(2026, 11, 30))
    assert (period.start, period.end) == (date(2025, 12, 1), date(2026, 12, 1))
    assert period.words == "in the year up to 30 November 2026"


def test_the_year_before_has_the_same_seasons():
    before = year_up_to(date(2026, 11, 30)).before
    assert (before.start, before.end) == (date(2024, 12, 1), date(2025, 12, 1))


@pytest.mark.parametrize(
    ("today", "end", "words"),
    [
        (date(2026, 11, 30), date(2026, 1, 1), "in 2025"),
        (date(2025, 12, 31), date(2026, 1, 1), "in 2025"),
        (date(2025, 6, 1), date(2025, 6, 2), "in 2025 up to 1 June 2025"),
    ],
)
def test_a_calendar_year_ends_with_today_while_it_lasts(today, end, words):
    period = calendar_year(2025, today)
    assert (period.start, period.end, period.words) == (date(2025, 1, 1), end, words)


@pytest.mark.parametrize(
    ("value", "words"), [(47.3, "47"), (7.44, "7.4"), (9.0, "9"), (0.0, "0"), (9.97, "10")]
)
def test_a_figure_has_no_more_digits_than_it_bears(value, words):
    assert figure(value) == words


def test_counts_are_told_with_the_herd_when_it_is_known():
    assert of_seen(31, 66, 68) == "31 of 66 cows seen (of a herd of 68)"
    assert of_seen(1, 1, 0) == "1 of 1 cow seen"
    assert between(Interval(35.2, 59.4)) == "35 to 59"


def test_only_what_the_numbers_support_tells_something():
    assert [kind.value for kind in FindingKind if kind.tells] == ["better", "worse", "plain"]
