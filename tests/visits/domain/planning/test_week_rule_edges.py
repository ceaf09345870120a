"""The edges of single rules, each just kept and just broken: hand-made weeks beside those of test_week_rules.

Drives are 20 minutes from the yard to `near`, 40 to `middle`, 60 to `far`. Every plan must also pass the audit.
"""

import pytest

from tests.visits.domain.planning.hand_made import (
    job,
    monday,
    planned,
    reasons,
    shift,
    starts,
    week,
    window,
)
from visits.domain.planning.audit import audit_week

MEAL = {"minutes": 30, "earliest": monday("11:00"), "latest": monday("11:50")}
LATE_START = shift(start=monday("11:00"), meal=MEAL)
LONG_SHIFT = shift(start="2026-03-02T00:00:00+00:00", end="2026-03-03T02:00:00+00:00")
DAY_AND_NIGHT = {"start": "2026-03-02T01:00:00+00:00", "end": "2026-03-03T01:00:00+00:00"}


def promise(clock):
    return {"shift": "mon", "start": monday(clock)}


def promised(name, clock, site="near", minutes=60, **changes):
    return job(name, site, minutes, fixed=promise(clock), **changes)


def cows(first, second):
    early = job("a", cows=first, leave_out_cost=10**5, windows=[window("07:00", "08:20")])
    return week(early, job("b", cows=second), shifts=[shift(max_cows=9)])


ROWS = [
    ("no job", week(), {}, {}),
    ("no shift", week(job("a")) | {"shifts": []}, {}, {"a": "no-crew"}),
    ("no job and no shift", week() | {"shifts": []}, {}, {}),
    (
        "a promise at each end of the shift",
        week(promised("a", "07:20"), promised("b", "16:10")),
        {"a": ("mon", "07:20"), "b": ("mon", "16:10")},
        {},
    ),
    (
        "a promise from whose end the way home is too long",
        week(promised("a", "07:20"), promised("b", "16:11")),
        {"a": ("mon", "07:20")},
        {"b": "fixed-clash"},
    ),
    (
        "two promises that leave just the drive between",
        week(promised("a", "09:00"), promised("b", "10:20", "middle")),
        {"a": ("mon", "09:00"), "b": ("mon", "10:20")},
        {},
    ),
    (
        "a job that just fits between two promises",
        week(promised("a", "09:00"), promised("b", "11:00"), job("c", windows=[window("09:30", "12:30")])),
        {"a": ("mon", "09:00"), "b": ("mon", "11:00"), "c": ("mon", "10:00")},
        {},
    ),
    (
        "a meal that is only possible at the base",
        week(promised("a", "12:30", "far"), shifts=[LATE_START]),
        {"a": ("mon", "12:30")},
        {},
    ),
    (
        "a meal that is not even possible at the base",
        week(promised("a", "12:29", "far"), shifts=[LATE_START]),
        {},
        {"a": "fixed-clash"},
    ),
    (
        "a meal that begins at the last moment allowed",
        week(
            promised("a", "10:50"),
            job("b", windows=[window("12:20", "13:20")]),
            shifts=[shift(meal=MEAL)],
        ),
        {"a": ("mon", "10:50"), "b": ("mon", "12:20")},
        {},
    ),
    (
        "a meal that would begin a minute too late",
        week(
            promised("a", "10:51"),
            job("b", windows=[window("12:20", "13:20")], leave_out_cost=10**5),
            shifts=[shift(meal=MEAL)],
        ),
        {"b": ("mon", "12:20")},
        {"a": "fixed-clash"},
    ),
    (
        "two herds that make just the cows limit",
        cows(4, 5),
        {"a": ("mon", "07:20"), "b": ("mon", "08:20")},
        {},
    ),
    ("two herds of one cow too many", cows(5, 5), {"b": ("mon", "07:20")}, {"a": "no-room"}),
    (
        "two herds of one hygiene level, in the order of their windows",
        week(
            job("a", "far", windows=[window("07:00", "09:00")]),
            job("b", "near", windows=[window("09:30", "11:00")]),
            hygiene={"near": 3, "far": 3},
        ),
        {"a": ("mon", "08:00"), "b": ("mon", "09:40")},
        {},
    ),
    (
        "a herd one level cleaner must come before",
        week(
            job("a", "far", windows=[window("07:00", "09:00")]),
            job("b", "near", windows=[window("09:30", "11:00")], leave_out_cost=1),
            hygiene={"near": 2, "far": 3},
        ),
        {"a": ("mon", "08:00")},
        {"b": "hygiene-clash"},
    ),
    (
        "one job of 24 hours",
        week(job("a", minutes=24 * 60, windows=[DAY_AND_NIGHT]), shifts=[LONG_SHIFT]),
        {"a": ("mon", "01:00")},
        {},
    ),
    (
        "one job of 24 hours in a shift of 24 hours: no drive fits",
        week(
            job("a", minutes=24 * 60, windows=[DAY_AND_NIGHT]),
            shifts=[LONG_SHIFT | DAY_AND_NIGHT],
        ),
        {},
        {"a": "no-room"},
    ),
    (
        "two windows, the first a minute too short",
        week(job("a", windows=[window("09:00", "09:59"), window("14:00", "15:00")])),
        {"a": ("mon", "14:00")},
        {},
    ),
    (
        "two windows that touch do not make one",
        week(job("a", minutes=90, windows=[window("09:00", "10:00"), window("10:00", "11:30")])),
        {"a": ("mon", "10:00")},
        {},
    ),
]


@pytest.mark.parametrize(
    ("problem", "expected", "why"), [row[1:] for row in ROWS], ids=[row[0] for row in ROWS]
)
def test_the_edge_is_kept(problem, expected, why):
    plan = planned(problem)
    assert (starts(plan), reasons(plan)) == (expected, why)
    assert audit_week(problem, plan) == []


def test_the_meal_at_the_base_is_written_down_before_the_leaving():
    (day,) = planned(week(promised("a", "12:30", "far"), shifts=[LATE_START]))["shifts"]
    assert day["meal"] == {"start": monday("11:00"), "end": monday("11:30")}
    assert day["leave"] == monday("11:30")


def test_the_clocks_going_back_in_the_night_give_no_hour_for_nothing():
    night = shift(start="2026-10-25T00:00:00+01:00", end="2026-10-25T06:00:00+00:00", max_work_minutes=420)
    problem = week(
        job("a", minutes=380, windows=[{"start": night["start"], "end": night["end"]}]), shifts=[night]
    )
    plan = planned(problem)
    (stop,) = plan["shifts"][0]["stops"]
    assert (stop["start"], stop["finish"]) == ("2026-10-25T00:20:00+01:00", "2026-10-25T05:40:00+00:00")
    assert plan["shifts"][0]["work_minutes"] == 420
    assert audit_week(problem, plan) == []


def test_the_day_of_a_clock_change_counts_as_one_day_of_lateness():
    day = shift(start="2026-03-30T07:00:00+01:00", end="2026-03-30T17:00:00+01:00")
    open_ = [{"start": day["start"], "end": day["end"]}]
    problem = week(job("a", windows=open_, due="2026-03-28", late_cost_per_day=100), shifts=[day])
    plan = planned(problem)
    assert plan["shifts"][0]["stops"][0]["days_late"] == 2
    assert plan["cost"]["lateness"] == 200
    assert audit_week(problem, plan) == []
