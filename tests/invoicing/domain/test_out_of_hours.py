from datetime import datetime, time

import pytest

from invoicing.domain.out_of_hours import UsualHours, hours_in_words, why_out_of_hours

USUAL = UsualHours(time(7), time(18))


@pytest.mark.parametrize(
    ("started", "hours", "why"),
    [
        ("2026-03-03T10:00", USUAL, ""),
        ("2026-03-03T07:00", USUAL, ""),
        ("2026-03-03T18:00:59", USUAL, ""),
        ("2026-03-03T06:59", USUAL, "begun at 06:59, before 07:00"),
        ("2026-03-03T18:01", USUAL, "begun at 18:01, after 18:00"),
        ("2026-03-07T10:00", USUAL, "begun on a Saturday"),
        ("2026-03-07T10:00", UsualHours(weekdays="123456"), ""),
        ("2026-03-03T23:30", UsualHours(), ""),
        ("2026-03-03T23:30", UsualHours(start=time(7)), ""),
    ],
)
def test_hours_by_hand(started, hours, why):
    assert why_out_of_hours(datetime.fromisoformat(started), hours) == why


@pytest.mark.parametrize(
    ("hours", "words"),
    [
        (USUAL, "Monday to Friday, from 07:00 until 18:00"),
        (UsualHours(weekdays="3"), "Wednesday"),
        (UsualHours(time(7), None, "67"), "Saturday, Sunday, from 07:00"),
        (UsualHours(None, time(18), "1246"), "Monday, Tuesday, Thursday, Saturday, until 18:00"),
    ],
)
def test_hours_are_told_in_words(hours, words):
    assert hours_in_words(hours) == words
