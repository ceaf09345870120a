from datetime import UTC, datetime, timedelta
from decimal import Decimal

import pytest

from visits.models import HeldHour, Van
from visits.selectors.offer_lines import OfferLine
from visits.templatetags.offers import adds, arrive, iso
from visits.web.offer_forms import hours_of_span

NINE = datetime(2026, 3, 3, 9, 40, tzinfo=UTC)


def line(minutes, metres, money):
    return OfferLine(Van(name="Ann"), NINE, NINE, minutes, metres, Decimal(money), 0.0, 0)


@pytest.mark.parametrize(
    ("added", "words"),
    [
        (line(38, 21_000, "31.20"), "+38 min, +21.0 km, +£31.20"),
        (line(-5, -800, "-2.40"), "−5 min, −0.8 km, −£2.40"),
    ],
)
def test_what_is_added_bears_its_sign(added, words):
    assert adds(added, "GBP") == words


def test_a_span_is_said_in_words():
    assert arrive(NINE, NINE + timedelta(minutes=90)) == "arrive between 09:40 and 11:10"
    assert arrive(NINE, NINE) == "arrive at 09:40"
    assert iso(NINE) == "2026-03-03T09:40:00+00:00"


def test_the_hours_to_choose_from_are_the_one_held_and_the_quarters_of_the_span():
    held = HeldHour(
        first_start=NINE, last_start=NINE + timedelta(minutes=40), start=NINE + timedelta(minutes=10)
    )
    words = [word for _, word in hours_of_span(held)]
    assert words == ["09:45", "09:50, the hour held", "10:00", "10:15"]


def test_a_span_without_a_quarter_has_the_hour_held_alone():
    held = HeldHour(first_start=NINE, last_start=NINE, start=NINE)
    assert [word for _, word in hours_of_span(held)] == ["09:40, the hour held"]
