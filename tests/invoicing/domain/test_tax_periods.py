from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from invoicing.domain.tax_periods import (
    BookDay,
    PeriodKind,
    free_period,
    month_of,
    period_around,
    quarter_of,
    year_of,
)


def ends(period):
    return f"{period.first} {period.last}"


def test_a_month_is_a_calendar_month():
    assert ends(month_of(date(2028, 2, 10))) == "2028-02-01 2028-02-29"
    assert ends(month_of(date(2028, 2, 14))) == "2028-02-01 2028-02-29"
    assert ends(month_of(date(2026, 12, 31))) == "2026-12-01 2026-12-31"
    assert (month_of(date(2026, 3, 2)).words, month_of(date(2026, 3, 2)).slug) == ("March 2026", "2026-03")


@pytest.mark.parametrize(
    ("begins", "expected"),
    [
        (1, "2026-01-01 2026-03-31"),
        (2, "2025-11-01 2026-01-31"),
        (3, "2025-12-01 2026-02-28"),
        (4, "2026-01-01 2026-03-31"),
    ],
)
def test_quarters_count_from_the_month_the_year_begins(begins, expected):
    assert ends(quarter_of(date(2026, 1, 31), begins)) == expected


@pytest.mark.parametrize(
    ("begins", "expected", "words"),
    [
        (1, "2026-01-01 2026-12-31", "2026"),
        (4, "2025-04-01 2026-03-31", "Apr 2025 to Mar 2026"),
    ],
)
def test_years_count_from_it_too(begins, expected, words):
    year = year_of(date(2026, 3, 31), begins)
    assert (ends(year), year.words) == (expected, words)


def test_free_days_are_taken_as_they_are():
    tax_year = free_period(date(2025, 4, 6), date(2026, 4, 5))
    assert tax_year.words == "6 Apr 2025 to 5 Apr 2026"
    assert tax_year.slug == "2025-04-06_to_2026-04-05"
    assert free_period(date(2026, 4, 5), date(2026, 4, 5)).words == "5 Apr 2026"


def test_a_period_that_ends_before_it_begins_is_refused():
    with pytest.raises(ValueError, match="before the first"):
        free_period(date(2026, 4, 5), date(2026, 4, 4))


@given(st.dates(date(2000, 2, 1), date(2099, 12, 1)), st.integers(1, 12), st.sampled_from(PeriodKind))
def test_periods_follow_each_other_without_a_gap(day, begins, kind):
    period = period_around(kind, day, begins)
    after = period_around(kind, period.last + timedelta(days=1), begins)
    assert period.holds(day)
    assert after.first == period.last + timedelta(days=1)


@pytest.mark.parametrize("kind", [PeriodKind, BookDay])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
