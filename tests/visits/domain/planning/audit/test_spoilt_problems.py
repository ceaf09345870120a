"""The problem changed under a clean plan, and problems that cannot be read."""

import pytest

from tests.visits.domain.planning.audit.spoil import GONE, spoilt, week
from visits.domain.planning.audit import Unreadable, audit_week

BREACHES = [
    ("shifts.0.max_work_minutes", 550, "shifts[0].return: 550.5 min after leaving, more than the 550"),
    ("shifts.0.max_cows", 49, "shifts[0].stops: 50 cows, more than the 49"),
    ("shifts.0.meal.minutes", 140, "shifts[0].stops: leave no gap of 140 min for the meal"),
    ("sites.1.hygiene", 3, "shifts[0].stops[3].job: hygiene 2 comes after j3 with 3"),
    ("sites.0.hygiene", 2, "shifts[0].stops[2].job: hygiene 1 comes after j2 with 2"),
    ("jobs.3.crews", ["bob"], "shifts[0].stops[3].job: may not be done by crew ann"),
    ("jobs.8.leave_out_cost", 5000, "left_out[3].reason: is not true, it fits into mon-bob"),
    ("jobs.3.due", "2026-03-01", "shifts[0].stops[3].days_late: says 0, it is 1"),
    ("travel.minutes.0.3", 41, "shifts[1].stops[0].arrive: 40 min after it was free to drive"),
]
UNREADABLE = [
    ("format", "x", "format: is not trimops-week-problem/1"),
    ("timezone", "Mars/Base", "timezone: is not a time zone"),
    ("bases.0.lat", 91, "bases[0].lat: is not between"),
    ("sites.0.lon", -181, "sites[0].lon: is not between"),
    ("sites.1.id", "f1", "bases: has an id that is given twice"),
    ("travel.kind", "crow", "travel.kind: is neither"),
    ("travel.places.1", "f9", "travel.places: does not name f1"),
    ("travel.minutes.1", [1], "travel.minutes: is not 4 rows of 4"),
    ("travel.km.1.1", -1, "travel.km[1][1]: is below 0"),
    ("shifts.0.end", "2026-03-02T06:00:00Z", "shifts[0].end: is before its start"),
    ("shifts.0.base", "barn", "shifts[0].base: there is no base barn"),
    ("shifts.0.meal.latest", "2026-03-02T11:00:00Z", "shifts[0].meal.latest: is before earliest"),
    ("jobs.0.site", "f7", "jobs[0].site: there is no site f7"),
    ("jobs.0.windows.0.end", "2026-03-02T07:00:00Z", "jobs[0].windows[0].end: is before its start"),
    ("jobs.2.fixed.shift", "sun", "jobs[2].fixed.shift: there is no shift sun"),
    ("jobs.0.minutes", GONE, "jobs[0].minutes: is missing"),
    ("jobs.0.due", "2 March", "jobs[0].due: is not an ISO 8601 day"),
    ("jobs.0.pay", 1, "jobs[0].pay: is not a key of this document"),
]


@pytest.mark.parametrize(("place", "value", "breach"), BREACHES)
def test_a_plan_that_breaks_a_changed_problem(place, value, breach):
    problem, plan = week("plain")
    assert any(line.startswith(breach) for line in audit_week(spoilt(problem, (place, value)), plan))


@pytest.mark.parametrize(("place", "value", "fault"), UNREADABLE)
def test_a_problem_that_cannot_be_read_is_refused_with_the_path(place, value, fault):
    problem, plan = week("plain")
    with pytest.raises(Unreadable) as refusal:
        audit_week(spoilt(problem, (place, value)), plan)
    assert any(line.startswith(fault) for line in refusal.value.faults)
