"""Which farms are told that the van comes later."""

from datetime import UTC, datetime, timedelta

import pytest

from visits.domain.messages.late_news import StopSoFar, late_stops

NOW = datetime(2026, 3, 3, 11, tzinfo=UTC)
MIN = timedelta(minutes=1)
BEGUN = StopSoFar(1, NOW - 120 * MIN, None, heard=NOW - 5 * MIN)
DONE = StopSoFar(1, NOW - 120 * MIN, None)


def stop(visit, told, likely, **more):
    return StopSoFar(visit, None if told is None else NOW + told * MIN, NOW + likely * MIN, **more)


def late(*stops, minutes=20):
    return late_stops(stops, minutes * MIN, NOW)


@pytest.mark.parametrize(
    ("told", "likely", "expected"),
    [
        (30, 30, []),
        (30, 50, []),
        (30, 51, [2]),
        (30, 20, []),
        (None, 90, []),
        (-30, 10, [2]),
        (0, 180, [2]),
        (0, 181, []),
    ],
)
def test_told_against_likely(told, likely, expected):
    assert late(BEGUN, stop(2, told, likely)) == expected


def test_all_that_follow_are_told_each_by_its_own_word():
    assert late(DONE, stop(2, 30, 60), stop(3, 120, 130), stop(4, 200, 300)) == [2, 4]


def test_nothing_is_told_before_the_first_visit_has_begun():
    assert late(stop(2, 30, 90), stop(3, 60, 200)) == []


def test_nothing_is_told_behind_a_visit_that_should_have_begun():
    assert late(DONE, stop(2, 30, 30, is_overdue=True), stop(3, 60, 200)) == []


@pytest.mark.parametrize(("ago", "expected"), [(45, [2]), (46, [])])
def test_nothing_is_told_behind_a_visit_that_nothing_was_heard_of(ago, expected):
    silent = StopSoFar(1, None, None, heard=NOW - ago * MIN)
    assert late(silent, stop(2, 30, 90)) == expected


def test_once_told_as_much_again_is_wanted():
    assert late(BEGUN, stop(2, 60, 70)) == []
    assert late(BEGUN, stop(2, 60, 81)) == [2]
