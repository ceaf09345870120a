"""The parts of a VTIMEZONE against the zone itself: Python's zoneinfo, hour by hour around every change."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from visits.documents.zone_observances import zone_observances

WITH_RULE = [
    "Europe/London",
    "Europe/Paris",
    "Europe/Dublin",
    "America/New_York",
    "Australia/Sydney",
    "Asia/Kolkata",
]
WITHOUT = ["America/Santiago", "Africa/Casablanca", "Asia/Jerusalem"]


@pytest.mark.parametrize("key", WITH_RULE)
def test_a_zone_that_keeps_its_rule_is_told_in_at_most_two_parts(key):
    parts = zone_observances(key, 2026, 2027)
    assert len(parts) in (1, 2)
    assert all(part.yearly for part in parts) or len(parts) == 1


@pytest.mark.parametrize("key", WITHOUT)
def test_a_zone_whose_rule_no_reader_would_follow_is_told_change_by_change(key):
    parts = zone_observances(key, 2026, 2027)
    assert len(parts) > 2
    assert not any(part.yearly for part in parts)


@pytest.mark.parametrize("key", WITHOUT)
def test_every_change_told_is_one_that_the_zone_makes(key):
    zone = ZoneInfo(key)
    for part in zone_observances(key, 2026, 2027)[1:]:
        moment = (part.starts - part.offset_from).replace(tzinfo=UTC)
        assert (moment - timedelta(seconds=1)).astimezone(zone).utcoffset() == part.offset_from
        assert moment.astimezone(zone).utcoffset() == part.offset_to


def test_a_rule_that_did_not_yet_hold_is_not_claimed():
    # The United States moved both changes in 2007 (Energy Policy Act of 2005).
    parts = zone_observances("America/New_York", 2006, 2008)
    assert not any(part.yearly for part in parts)
    assert datetime(2006, 4, 2, 2) in {part.starts for part in parts}  # noqa: DTZ001
    assert datetime(2007, 3, 11, 2) in {part.starts for part in parts}  # noqa: DTZ001


def test_summer_is_the_part_with_the_clock_ahead_also_in_the_south():
    by_name = {part.name: part.is_summer for part in zone_observances("Australia/Sydney", 2026, 2026)}
    assert by_name == {"AEDT": True, "AEST": False}
