"""Days in other languages; the words below are from memory, not from the library."""

from datetime import date

import pytest

from farms.domain.told_by import LANGUAGES
from visits.domain.messages.days_in_language import day_in


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("en", "Tuesday 1 December"),
        ("cy", "Dydd Mawrth 1 Rhagfyr"),
        ("ga", "Dé Máirt 1 Nollaig"),
        ("nl", "dinsdag 1 december"),
        ("de", "Dienstag 1. Dezember"),
        ("fr", "mardi 1 décembre"),
        ("da", "tirsdag 1. december"),
    ],
)
def test_the_first_of_december(language, words):
    assert day_in(language, date(2026, 12, 1)) == words


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_offered_has_every_day_of_a_year_apart(language):
    days = [date.fromordinal(date(2028, 1, 1).toordinal() + n) for n in range(366)]
    assert len({day_in(language, day) for day in days}) == 366
