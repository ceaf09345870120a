"""What the problem becomes by what happened."""

from datetime import datetime

import pytest

from tests.visits.domain.planning.hand_made import job, monday, shift, week
from visits.domain.planning.replan.day_so_far import SoFar
from visits.domain.planning.replan.events import CalledOff, NewJob, OutOfAction, RunningLate, after


def at(clock):
    return datetime.fromisoformat(monday(clock))


def test_a_job_called_off_is_gone():
    assert [j["id"] for j in after(week(job("a"), job("b")), CalledOff("a"))["jobs"]] == ["b"]


def test_only_that_crews_shifts_close():
    problem = week(
        job("a"), shifts=[shift(), shift(id="mon-ben", crew="ben"), shift(id="eve", start=monday("16:00"))]
    )
    found = after(problem, OutOfAction("ann", at("06:00"), at("17:00")))
    left = {s["id"]: (s["start"][11:16], s["end"][11:16]) for s in found["shifts"]}
    assert left == {"mon": ("17:00", "17:30"), "mon-ben": ("07:00", "17:30"), "eve": ("17:00", "17:30")}


def test_a_shift_closed_all_day_is_gone():
    assert after(week(job("a")), OutOfAction("ann", at("06:00"), at("18:00")))["shifts"] == []


def test_a_lame_cow_is_one_more_job():
    assert [j["id"] for j in after(week(job("a")), NewJob(job("lame")))["jobs"]] == ["a", "lame"]


def test_a_new_site_needs_travel_by_estimate():
    new = NewJob(job("lame", "hill"), {"id": "hill", "lat": 54.4, "lon": -2.2})
    with pytest.raises(ValueError, match="matrix"):
        after(week(job("a")), new)
    travel = {"kind": "estimate", "circuity": 1.3, "kmh": 50, "minutes_per_leg": 2}
    assert [s["id"] for s in after(week(job("a"), travel=travel), new)["sites"]][-1] == "hill"


def test_a_late_van_is_a_day_begun():
    found = after(week(job("a")), RunningLate(SoFar("mon", "a", at("09:00"), at("12:15"))))
    assert found["jobs"][0]["fixed"] == {"shift": "mon", "start": monday("09:00")}
    assert found["jobs"][0]["minutes"] == 195
