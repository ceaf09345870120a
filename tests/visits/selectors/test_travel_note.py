"""A week's page says where its drives come from, and warns where they are not what they were meant to be."""

from zoneinfo import ZoneInfo

import pytest

from visits.models import WeekPlan
from visits.selectors.travel_note import is_estimated, travel_note

LONDON = ZoneInfo("Europe/London")
BY_ROAD = {"source": "server", "counts": {"server": 106, "estimate": 4}}


def note(**travel):
    return travel_note(WeekPlan(travel=travel), LONDON)


def test_a_plan_that_remembers_nothing_says_nothing():
    assert travel_note(None, LONDON) is None
    assert note() is None


@pytest.mark.parametrize(
    ("travel", "text"),
    [
        (
            {"source": "estimate", "counts": {"estimate": 110}},
            "Distances and times of the drives are estimated; no road map is set up.",
        ),
        ({"source": "server", "counts": {"server": 110}}, "Drives by road, from the roads server."),
        ({"source": "local", "counts": {"local": 2}}, "Drives by road, from the road map on this machine."),
        (
            BY_ROAD,
            "Drives by road, from the roads server; 4 of 110 estimated, where it knows no road.",
        ),
    ],
)
def test_where_the_drives_come_from_is_said_in_a_line(travel, text):
    said = note(**travel)
    assert (said.text, said.is_warning) == (text, False)


def test_a_map_that_failed_is_told_with_its_hour_in_the_zone_of_the_business():
    said = note(source="server", counts={"estimate": 110}, failed_at="2026-07-05T18:05:00+00:00", why="slow")
    assert said.text == "Road times could not be had at 19:05; distances estimated."
    assert said.is_warning


def test_after_a_failure_what_was_known_before_is_told_from_what_is_estimated():
    said = note(**BY_ROAD, failed_at="2026-03-01T19:05:00+00:00", why="slow")
    assert said.text == "Road times could not be had at 19:05; distances estimated for 4 of 110 drives."


def test_each_drive_of_a_plan_knows_whether_it_is_an_estimate():
    plan = WeekPlan(travel={"places": ["van-1", "farm-2"], "marks": ["-s", "e-"]})
    assert not is_estimated(plan, "van-1", "farm-2")
    assert is_estimated(plan, "farm-2", "van-1")
    assert is_estimated(plan, "van-1", "farm-9")
    assert not is_estimated(plan, "van-1", "van-1")
