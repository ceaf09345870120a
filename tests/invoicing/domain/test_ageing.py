from datetime import date, timedelta

import pytest

from invoicing.domain.ageing import Age, age_of, due_days

TODAY = date(2026, 3, 2)


@pytest.mark.parametrize(
    ("days", "age"),
    [
        (-5, Age.NOT_YET_DUE),
        (0, Age.NOT_YET_DUE),
        (1, Age.TO_30),
        (30, Age.TO_30),
        (31, Age.TO_60),
        (60, Age.TO_60),
        (61, Age.TO_90),
        (90, Age.TO_90),
        (91, Age.OVER_90),
        (999, Age.OVER_90),
    ],
)
def test_the_bands(days, age):
    assert age_of(days) is age


def test_the_days_of_a_band_are_those_that_fall_into_it():
    for days in range(-100, 200):
        due = TODAY - timedelta(days=days)
        within = [
            age
            for age in Age
            for first, last in [due_days(age, TODAY)]
            if (first is None or first <= due) and (last is None or due <= last)
        ]
        assert within == [age_of(days)]


def test_each_has_words_of_its_own():
    assert len({age.label for age in Age}) == len(Age)
