"""What is news for a week that has a plan, and what has only gone by."""

import copy
from datetime import date

import pytest

from visits.domain.planning.problem_news import has_news

THURSDAY = date(2026, 3, 5)


def windows(*days):
    return [
        {"start": f"2026-03-0{day}T08:00:00+00:00", "end": f"2026-03-0{day}T15:30:00+00:00"} for day in days
    ]


def job(number, days=(3, 4, 5, 6), **fields):
    words = {
        "site": f"farm-{number}",
        "minutes": 90,
        "cows": 12,
        "windows": windows(*days),
        "due": "2026-03-09",
    }
    return {"id": f"visit-{number}", "late_cost_per_day": 20, "leave_out_cost": 500, **words, **fields}


def shift(day, **fields):
    times = {"start": f"2026-03-0{day}T08:00:00+00:00", "end": f"2026-03-0{day}T17:00:00+00:00"}
    return {"id": f"van-1-2026-03-0{day}", "crew": "van-1", "max_cows": 70, **times, **fields}


def stop(number, day, hour=9):
    return {"job": f"visit-{number}", "start": f"2026-03-0{day}T{hour:02d}:00:00+00:00"}


def site(number, **fields):
    return {"id": f"farm-{number}", "lat": 54.1, "lon": -2.3, "hygiene": 1, **fields}


BEFORE = {
    "sites": [site(1), site(2), site(3)],
    "shifts": [shift(3), shift(4), shift(5), shift(6)],
    "jobs": [job(1), job(2), job(3)],
}
# Visit 1 on Tuesday the 3rd, visit 2 on Friday the 6th, visit 3 left out.
PLAN = {"shifts": [{"stops": [stop(1, 3)]}, {"stops": [stop(2, 6)]}], "left_out": [{"job": "visit-3"}]}
# The evening of Wednesday the 4th: Tuesday's visit is done, the days before Thursday are over.
GONE_BY = {
    "sites": [site(2), site(3)],
    "shifts": [shift(5), shift(6)],
    "jobs": [job(2, (5, 6)), job(3, (5, 6))],
}


def changed(**parts):
    return {**copy.deepcopy(GONE_BY), **parts}


def with_job(number, **fields):
    jobs = [
        job(number, (5, 6), **fields) if each["id"] == f"visit-{number}" else each for each in GONE_BY["jobs"]
    ]
    return changed(jobs=jobs)


PROMISED = {"shift": "van-1-2026-03-06", "start": "2026-03-06T09:00:00+00:00"}
NO_NEWS = {
    "days that are over and a visit that is done": GONE_BY,
    "a dearer day of lateness": with_job(3, late_cost_per_day=40),
    "a visit promised the hour that the plan gave it": with_job(2, fixed=PROMISED),
    "one that was left out and is not wanted any more": changed(jobs=[job(2, (5, 6))], sites=[site(2)]),
}
NEWS = {
    "a new visit": changed(jobs=[*GONE_BY["jobs"], job(4, (5, 6))]),
    "a longer one": with_job(3, minutes=120),
    "more cows": with_job(3, cows=20),
    "another last day": with_job(3, due="2026-03-06"),
    "fewer hours ahead": changed(jobs=[job(2, (5, 6)), job(3, (6,))]),
    "a visit promised another hour": with_job(2, fixed={**PROMISED, "start": "2026-03-06T13:00:00+00:00"}),
    "a visit promised that the plan left out": with_job(3, fixed=PROMISED),
    "a visit of Friday called off": changed(jobs=[job(3, (5, 6))], sites=[site(3)]),
    "a van that stays in on Friday": changed(shifts=[shift(5)]),
    "a shorter day": changed(shifts=[shift(5), shift(6, end="2026-03-06T12:00:00+00:00")]),
    "a second van": changed(shifts=[*GONE_BY["shifts"], shift(5, id="van-2-2026-03-05", crew="van-2")]),
    "another hygiene level": changed(sites=[site(2), site(3, hygiene=3)]),
    "a farm that lies elsewhere": changed(sites=[site(2, lat=54.2), site(3)]),
}


@pytest.mark.parametrize("now", NO_NEWS.values(), ids=NO_NEWS.keys())
def test_what_has_only_gone_by_is_no_news(now):
    assert not has_news(BEFORE, PLAN, now, THURSDAY)


@pytest.mark.parametrize("now", NEWS.values(), ids=NEWS.keys())
def test_what_asks_for_another_plan_is_news(now):
    assert has_news(BEFORE, PLAN, now, THURSDAY)


def test_where_no_plan_was_found_the_same_work_is_no_news_and_a_new_visit_is():
    assert not has_news(BEFORE, None, GONE_BY, THURSDAY)
    assert has_news(BEFORE, None, NEWS["a new visit"], THURSDAY)


def test_a_problem_is_no_news_to_itself():
    assert not has_news(BEFORE, PLAN, copy.deepcopy(BEFORE), date(2026, 3, 3))


def test_an_hour_that_was_promised_before_already_is_no_news():
    promised = with_job(2, fixed=PROMISED)
    # The promised hour stands among the hours as well, as the week's problem writes it.
    promised["jobs"][0]["windows"].insert(0, {"start": PROMISED["start"], "end": "2026-03-06T10:30:00+00:00"})
    assert not has_news(promised, PLAN, copy.deepcopy(promised), THURSDAY)
