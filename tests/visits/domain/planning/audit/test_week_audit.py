"""Clean plans audit clean; tolerances are as stated; every kind of travel and clock."""

import copy
import json

import pytest
from pyproj import Geod

from tests.visits.domain.planning.audit.spoil import spoilt, week
from visits.domain.planning.audit import audit_week


@pytest.mark.parametrize("name", ["plain", "clock_change"])
def test_a_plan_drawn_up_by_hand_is_clean(name):
    assert audit_week(*week(name)) == []


def test_the_documents_are_left_as_they_were():
    problem, plan = week("plain")
    before = json.dumps([problem, plan])
    audit_week(copy.deepcopy(problem), plan)
    audit_week(problem, plan)
    assert json.dumps([problem, plan]) == before


@pytest.mark.parametrize(
    ("place", "within"),
    [
        ("shifts.0.work_minutes", 550.5016),
        ("shifts.0.km", 63.126),
        ("shifts.0.stops.0.start", "2026-03-02T07:59:59.9Z"),
        ("cost.total", 52776.255),
    ],
)
def test_a_difference_within_the_tolerance_is_no_breach(place, within):
    problem, plan = week("plain")
    assert audit_week(problem, spoilt(plan, (place, within))) == []


def test_work_over_the_clock_change_is_counted_in_real_hours():
    problem, plan = week("clock_change")
    (breach,) = audit_week(problem, spoilt(plan, ("shifts.0.work_minutes", 390)))
    assert breach == "shifts[0].work_minutes: says 390 min, it is 330 min"


@pytest.mark.parametrize(("shift", "stop", "wrong"), [(0, 1, 0), (1, 0, 0), (0, 0, 1)])
def test_lateness_counts_calendar_days_of_the_zone(shift, stop, wrong):
    problem, plan = week("clock_change")
    changed = spoilt(plan, (f"shifts.{shift}.stops.{stop}.days_late", wrong))
    assert audit_week(problem, changed) == [
        f"shifts[{shift}].stops[{stop}].days_late: says {wrong}, it is {1 - wrong}"
    ]


def test_a_meal_is_not_called_for_when_the_shift_is_home_by_then():
    problem, plan = week("plain")
    meal = {"minutes": 30, "earliest": "2026-03-02T14:10:00Z", "latest": "2026-03-02T15:00:00Z"}
    assert audit_week(spoilt(problem, ("shifts.1.meal", meal)), plan) == []
    meal["earliest"] = "2026-03-02T14:09:00Z"
    assert audit_week(spoilt(problem, ("shifts.1.meal", meal)), plan) == [
        "shifts[1].meal: is not printed, though the shift is away at meal time"
    ]


def test_a_meal_before_leaving_counts():
    problem, plan = week("plain")
    eaten = {"start": "2026-03-02T12:00:00Z", "end": "2026-03-02T12:20:00Z"}
    meal = {"minutes": 20, "earliest": "2026-03-02T11:50:00Z", "latest": "2026-03-02T12:30:00Z"}
    assert audit_week(spoilt(problem, ("shifts.1.meal", meal)), spoilt(plan, ("shifts.1.meal", eaten))) == []


def test_estimated_drives_agree_with_a_second_geodesic_library():
    """Source: PROJ's geodesic on the WGS 84 ellipsoid, through pyproj, a different code from geographiclib."""
    problem, plan = week("clock_change")
    points = [{"id": "n", "lat": 54.1, "lon": -2.1}, {"id": "yard", "lat": 54, "lon": -2}]
    _, _, metres = Geod(ellps="WGS84").inv(-2.1, 54.1, -2, 54)
    km = metres * 1.35 / 1000
    kmh = km * 60 / 28  # the drive then takes 28 + 2 minutes, as in the hand-made plan
    travel = {"kind": "estimate", "circuity": 1.35, "kmh": kmh, "minutes_per_leg": 2}
    changed = spoilt(problem, ("travel", travel), ("bases.0", points[1]), ("sites.0", points[0]))
    told = spoilt(
        plan,
        *((f"shifts.{shift}.km", round(2 * km, 3)) for shift in (0, 1)),
        *((f"shifts.{shift}.stops.0.km", round(km, 3)) for shift in (0, 1)),
    )
    assert audit_week(changed, told) == []
    assert audit_week(spoilt(changed, ("travel.circuity", 1.36)), told) != []
