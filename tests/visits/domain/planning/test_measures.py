from datetime import UTC, datetime
from zoneinfo import ZoneInfo

import pytest

from visits.domain.planning import measures


@pytest.mark.parametrize(
    ("minutes", "ticks"),
    [(1, 600), (0.1, 60), (20.00025, 12000), (1 / 1200, 1), (0.0008, 0), (185.5, 111300)],
)
def test_minutes_are_whole_deciseconds_rounded_half_up(minutes, ticks):
    assert measures.deciseconds(minutes) == ticks


def test_kilometres_are_whole_metres_rounded_half_up():
    assert [measures.metres(km) for km in (15.2, 0.0005, 0.0004999, 1.0015)] == [15200, 1, 0, 1002]


def test_what_was_rounded_away_is_told():
    assert measures.whole(0.1, 600) == (60, False)
    assert measures.whole(1 / 3, 600) == (200, True)


def test_more_than_three_thousand_years_count_as_that():
    assert measures.deciseconds(1e300) == measures.deciseconds(float("inf")) == measures.MOST
    assert measures.whole(1e300, 600) == (measures.MOST, False)


@pytest.mark.parametrize(("micros", "ticks"), [(0, 0), (49_999, 0), (50_000, 1), (149_999, 1), (999_999, 10)])
def test_an_instant_finer_than_a_tenth_goes_to_the_nearest(micros, ticks):
    assert measures.nearest_tick(datetime(1970, 1, 1, 0, 0, 0, micros, tzinfo=UTC)) == ticks


def test_an_instant_goes_to_ticks_and_back_with_the_offset_of_the_zone():
    ticks = measures.tick(datetime(2026, 3, 29, 0, 30, tzinfo=UTC))
    assert measures.written(ticks, ZoneInfo("Europe/London")) == "2026-03-29T00:30:00+00:00"
    assert measures.written(ticks + 36_001, ZoneInfo("Europe/London")) == "2026-03-29T02:30:00.100+01:00"


def test_document_figures_are_whole_numbers_where_they_are_whole():
    assert repr(measures.minutes(1200)) == "2"
    assert repr(measures.kilometres(1500)) == "1.5"
    assert measures.minutes(1) == pytest.approx(1 / 600)
