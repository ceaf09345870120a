"""When a visit should be over: by its length, moved by the cows that are done."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from visits.domain.lone_watch.expected_end import WRAP_UP, WorkSoFar, expected_end, grace_of

TEN = datetime(2026, 3, 3, 10, tzinfo=UTC)
HALF_HOUR = timedelta(minutes=30)


def minutes(number):
    return timedelta(minutes=number)


def work(**changes):
    return WorkSoFar(**{"began_at": TEN, "expected": minutes(120), "head_count": 12, **changes})


@pytest.mark.parametrize(
    ("done", "last", "end"),
    [
        (0, None, 120),  # nothing known: as planned
        (6, 60, 140),  # as planned, and the washing comes on top: ten minutes a cow
        (12, 90, 120),  # ahead of the plan: it is not asked earlier
        (3, 90, 200),  # slow: nine more cows at ten minutes, and the washing
        (14, 170, 190),  # more cows than expected: the washing only
    ],
)
def test_cows_done_move_it_later_and_never_earlier(done, last, end):
    last_at = None if last is None else TEN + minutes(last)
    assert expected_end(work(cows_done=done, last_cow_at=last_at)) == TEN + minutes(end)


def test_a_visit_without_expected_cows_is_no_division_by_nothing():
    assert expected_end(work(head_count=0, cows_done=1, last_cow_at=TEN + minutes(115))) == (
        TEN + minutes(115) + WRAP_UP
    )


def test_an_hour_that_comes_twice_is_two_hours():
    """In the zone of the wall 01:30 plus two hours would be 03:30, an hour too late or too early."""
    began = datetime(2026, 10, 25, 0, 30, tzinfo=UTC).astimezone(ZoneInfo("Europe/London"))
    assert expected_end(work(began_at=began)) == datetime(2026, 10, 25, 2, 30, tzinfo=UTC)
    last = began + minutes(1)
    assert expected_end(work(began_at=began, cows_done=1, last_cow_at=last)).tzinfo is UTC


@pytest.mark.parametrize(
    ("is_quiet", "heard", "grace"),
    [(False, None, 30), (True, None, 60), (True, -5, 60), (True, 10, 30), (False, 10, 30)],
)
def test_a_farm_without_a_network_has_twice_the_grace_until_the_phone_is_heard_there(is_quiet, heard, grace):
    heard_at = None if heard is None else TEN + minutes(heard)
    found = grace_of(HALF_HOUR, is_quiet_place=is_quiet, began_at=TEN, heard_at=heard_at)
    assert found == minutes(grace)
