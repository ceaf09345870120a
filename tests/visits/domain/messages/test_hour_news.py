"""What a farm was told against what is so."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from visits.domain.messages.hour_news import HourKnown, HourNow, hour_news
from visits.domain.messages.message_kinds import MessageKind
from visits.domain.visit_states import VisitState

LONDON = ZoneInfo("Europe/London")
NOW = datetime(2026, 3, 2, 12, tzinfo=UTC)
TEN = datetime(2026, 3, 5, 10, tzinfo=UTC)
DAY = timedelta(days=1)
W, P, C = VisitState.WANTED, VisitState.PLANNED, VisitState.CONFIRMED
U, F, OFF = VisitState.UNDER_WAY, VisitState.FINISHED, VisitState.CALLED_OFF


def kind(known, state, hour, now=NOW, zone=LONDON):
    news = hour_news(HourKnown(known), HourNow(state, hour, now, zone))
    return news.kind.value if news else None


@pytest.mark.parametrize(
    ("known", "state", "hour", "expected"),
    [
        (None, W, None, None),
        (None, P, TEN, "booked"),
        (None, C, TEN, "booked"),
        (TEN, P, TEN, None),
        (TEN, C, TEN, None),
        (TEN, P, TEN + timedelta(minutes=9), None),
        (TEN, P, TEN - timedelta(minutes=10), "moved"),
        (TEN, P, TEN + DAY, "moved"),
        (TEN, W, None, "put_off"),
        (TEN, OFF, TEN, "called_off"),
        (TEN, OFF, None, "called_off"),
        (None, OFF, TEN, None),
        (TEN, U, TEN, None),
        (TEN, F, TEN, None),
        (None, U, TEN, None),
        (None, P, NOW, None),
        (None, P, NOW - DAY, None),
        (NOW - DAY, OFF, None, None),
        (NOW - DAY, W, None, None),
        (NOW - DAY, P, TEN, "moved"),
    ],
)
def test_every_pair_of_told_and_true(known, state, hour, expected):
    assert kind(known, state, hour) == expected


def test_nine_minutes_over_midnight_are_another_day():
    late = datetime(2026, 3, 5, 23, 56, tzinfo=UTC)
    assert kind(late, P, late + timedelta(minutes=9)) == "moved"


def test_the_hour_that_comes_twice_is_told_apart():
    first = datetime(2026, 10, 25, 1, 30, tzinfo=LONDON)
    second = first.replace(fold=1)
    assert kind(first, P, second) == "moved"


def test_news_of_a_move_names_both_hours():
    news = hour_news(HourKnown(TEN), HourNow(P, TEN + DAY, NOW, LONDON))
    assert (news.kind, news.before, news.hour) == (MessageKind.MOVED, TEN, TEN + DAY)
