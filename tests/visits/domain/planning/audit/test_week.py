from dataclasses import replace
from datetime import date
from zoneinfo import ZoneInfo

from tests.visits.domain.planning.audit.one_run import a_week, clock, job


def test_days_late_follow_the_calendar_of_the_zone():
    due = job("a", due=date(1970, 1, 1))
    week = a_week(due)
    assert [week.days_late(due, clock(hours)) for hours in (-30, 23.9, 24, 49)] == [0, 0, 1, 2]
    east = replace(week, zone=ZoneInfo("Pacific/Auckland"))  # 12 hours ahead of UTC in 1970
    assert east.days_late(due, clock(12)) == 1


def test_only_shifts_of_an_allowed_crew_take_a_job():
    week = a_week(job("a"))
    assert len(week.shifts_for(job("a"))) == 1
    assert week.shifts_for(job("a", crews=frozenset())) == []
