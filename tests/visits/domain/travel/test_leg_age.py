from datetime import UTC, datetime, timedelta

import pytest

from visits.domain.travel.leg_age import is_left_alone, wants_asking_again

NOW = datetime(2026, 3, 2, tzinfo=UTC)


@pytest.mark.parametrize(
    ("days", "has_road", "expected"),
    [(90, True, False), (91, True, True), (7, False, False), (8, False, True)],
)
def test_a_road_is_believed_for_a_season_and_no_road_for_a_week(days, has_road, expected):
    assert wants_asking_again(NOW - timedelta(days=days), has_road=has_road, at=NOW) is expected


@pytest.mark.parametrize(
    ("minutes", "expected"), [(0, True), (9, True), (10, False), (600, False), (-600, False)]
)
def test_a_map_that_failed_is_left_alone_for_ten_minutes(minutes, expected):
    assert is_left_alone(NOW - timedelta(minutes=minutes), NOW) is expected
