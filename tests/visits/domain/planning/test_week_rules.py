"""One hand-made week per rule of the contract and per edge of it. Every plan must also pass the audit.

Drives are 20 minutes from the yard to `near`, 40 to `middle`, 60 to `far`; work costs 40 a minute, roads 10 a km.
"""

import pytest

from tests.visits.domain.planning.hand_made import (
    job,
    matrix,
    monday,
    planned,
    reasons,
    shift,
    starts,
    week,
    window,
)
from visits.domain.planning.audit import audit_week


def meal(earliest="11:30", latest="14:00", minutes=30):
    return {"minutes": minutes, "earliest": monday(earliest), "latest": monday(latest)}


def promise(clock, day="mon"):
    return {"shift": day, "start": monday(clock)}


TWO = [shift(), shift(id="mon2", crew="ben")]
LATE = {"due": "2026-03-01", "late_cost_per_day": 100}
TUESDAY = {"start": "2026-03-03T00:00:00+00:00", "end": "2026-03-03T04:00:00+00:00"}
NIGHT = shift(start=monday("20:00"), end="2026-03-03T06:00:00+00:00")

PLANNED = [
    (
        "a window holds the start back",
        week(job("a", windows=[window("09:30", "12:00")])),
        {"a": ("mon", "09:30")},
    ),
    (
        "a window holds a job that just fits it",
        week(job("a", windows=[window("09:30", "10:30")])),
        {"a": ("mon", "09:30")},
    ),
    (
        "the second window is used",
        week(job("a", windows=[window("07:00", "07:50"), window("13:00", "14:00")])),
        {"a": ("mon", "13:00")},
    ),
    (
        "windows out of order",
        week(job("a", windows=[window("13:00", "14:00"), window("07:00", "07:50")])),
        {"a": ("mon", "13:00")},
    ),
    ("a crew is kept", week(job("a", crews=["ben"]), shifts=TWO), {"a": ("mon2", "07:20")}),
    ("a promise is kept", week(job("a", fixed=promise("11:11"))), {"a": ("mon", "11:11")}),
    (
        "a promise is kept though leaving out is cheaper",
        week(job("a", fixed=promise("08:00"), leave_out_cost=0)),
        {"a": ("mon", "08:00")},
    ),
    (
        "the cleaner herd goes first though it is farther",
        week(job("a", "near"), job("b", "far"), hygiene={"near": 2}),
        {"b": ("mon", "08:00"), "a": ("mon", "09:40")},
    ),
    (
        "two herds of one level go in the short order",
        week(
            job("a", "near", windows=[window("07:00", "08:30")]),
            job("b", "far"),
            hygiene={"near": 2, "far": 2},
        ),
        {"a": ("mon", "07:20"), "b": ("mon", "09:00")},
    ),
    (
        "two jobs on one farm need no drive between",
        week(job("a", windows=[window("07:00", "08:30")]), job("b", windows=[window("07:00", "09:30")])),
        {"a": ("mon", "07:20"), "b": ("mon", "08:20")},
    ),
    (
        "a meal at home after the round costs nothing",
        week(job("a", windows=[window("10:00", "12:00")]), shifts=[shift(meal=meal())]),
        {"a": ("mon", "10:00")},
    ),
    (
        "a meal at home before leaving costs nothing",
        week(job("a", windows=[window("13:00", "15:00")]), shifts=[shift(meal=meal())]),
        {"a": ("mon", "13:00")},
    ),
    (
        "a meal between two jobs pushes the second",
        week(
            job("a", windows=[window("09:00", "12:10")], minutes=190),
            job("b", windows=[window("12:10", "15:00")], minutes=120),
            shifts=[shift(meal=meal())],
        ),
        {"a": ("mon", "09:00"), "b": ("mon", "12:40")},
    ),
    (
        "a round done before meal time needs no meal",
        week(job("a", minutes=100), shifts=[shift(meal=meal("09:20", "09:20"))]),
        {"a": ("mon", "07:20")},
    ),
    (
        "a round begun after meal time needs no meal",
        week(
            job("a", windows=[window("09:21", "10:30")]),
            shifts=[shift(start=monday("08:50"), meal=meal("08:50", "09:00"))],
        ),
        {"a": ("mon", "09:21")},
    ),
    (
        "work of just the limit is allowed",
        week(job("a"), shifts=[shift(max_work_minutes=100)]),
        {"a": ("mon", "07:20")},
    ),
    (
        "cows of just the limit are allowed",
        week(job("a", cows=9), shifts=[shift(max_cows=9)]),
        {"a": ("mon", "07:20")},
    ),
    (
        "a shift that just holds the round is enough",
        week(job("a"), shifts=[shift(end=monday("08:40"))]),
        {"a": ("mon", "07:20")},
    ),
    ("a job of no minutes is done", week(job("a", minutes=0)), {"a": ("mon", "07:20")}),
    (
        "the day before midnight is less late",
        week(job("a", **LATE, windows=[window("23:59", "23:59"), TUESDAY], minutes=0), shifts=[NIGHT]),
        {"a": ("mon", "23:59")},
    ),
    (
        "a wait is shorter than a second shift is dear",
        week(
            job("a", windows=[window("07:00", "10:30")]),
            job("b", windows=[window("10:00", "11:00")]),
            shifts=[shift(cost_fixed=90000), shift(id="mon2", crew="ben", cost_fixed=90001)],
        ),
        {"a": ("mon", "09:00"), "b": ("mon", "10:00")},
    ),
    (
        "tenths of a second are kept",
        week(
            job("a", minutes=60.005, windows=[window("07:00", "09:00")]),
            job(
                "b",
                windows=[window("07:00", "10:00")],
                fixed={"shift": "mon", "start": "2026-03-02T08:20:00.300+00:00"},
            ),
        ),
        {"a": ("mon", "07:20"), "b": ("mon", "08:20")},
    ),
]

LEFT_OUT = [
    ("no shift of its crew", week(job("a", crews=["zoe"])), {"a": "no-crew"}),
    ("nobody is allowed", week(job("a", crews=[])), {"a": "no-crew"}),
    ("no window at all", week(job("a", windows=[])), {"a": "no-window-in-any-shift"}),
    ("a window on another day", week(job("a", windows=[TUESDAY])), {"a": "no-window-in-any-shift"}),
    (
        "longer than its window",
        week(job("a", minutes=61, windows=[window("09:00", "10:00")])),
        {"a": "too-long-for-any-window"},
    ),
    (
        "longer than two touching windows apart",
        week(job("a", minutes=90, windows=[window("09:00", "10:00"), window("10:00", "11:00")])),
        {"a": "too-long-for-any-window"},
    ),
    (
        "a promise outside the window",
        week(job("a", windows=[window("09:00", "10:00")], fixed=promise("09:30"))),
        {"a": "fixed-clash"},
    ),
    ("a promise before the drive is done", week(job("a", fixed=promise("07:19"))), {"a": "fixed-clash"}),
    (
        "two promises at once",
        week(job("a", fixed=promise("09:00")), job("b", fixed=promise("09:30"))),
        {"b": "fixed-clash"},
    ),
    (
        "a promise by a crew that is not allowed",
        week(job("a", crews=["ben"], fixed=promise("09:00")), shifts=TWO),
        {"a": "fixed-clash"},
    ),
    (
        "a farm too far for the shift",
        week(job("a", "far"), shifts=[shift(end=monday("09:59"))]),
        {"a": "no-room"},
    ),
    ("too many cows for any van", week(job("a", cows=10), shifts=[shift(max_cows=9)]), {"a": "no-room"}),
    ("more work than the limit", week(job("a"), shifts=[shift(max_work_minutes=99)]), {"a": "no-room"}),
    ("cheaper to leave out", week(job("a", leave_out_cost=4299)), {"a": "not-worth-it"}),
    (
        "hygiene stands in the way",
        week(
            job("a", "near", fixed=promise("08:00")),
            job("b", "near", fixed=promise("12:00")),
            job("c", "far", windows=[window("09:00", "12:00")]),
            hygiene={"near": 2},
        ),
        {"c": "hygiene-clash"},
    ),
    (
        "no room for a meal",
        week(job("a", "near", 480), shifts=[shift(end=monday("16:00"), meal=meal("12:00", "13:00"))]),
        {"a": "no-room"},
    ),
    (
        "the job that must be planned goes first",
        week(job("a", minutes=500), job("b", minutes=500, leave_out_cost=10**8)),
        {"b": "no-room"},
    ),
    ("no shifts at all", week(job("a")) | {"shifts": []}, {"a": "no-crew"}),
]


@pytest.mark.parametrize(
    ("problem", "expected"), [row[1:] for row in PLANNED], ids=[row[0] for row in PLANNED]
)
def test_the_plan_keeps_the_rule(problem, expected):
    plan = planned(problem)
    assert starts(plan) == expected
    assert audit_week(problem, plan) == []


@pytest.mark.parametrize(
    ("problem", "expected"), [row[1:] for row in LEFT_OUT], ids=[row[0] for row in LEFT_OUT]
)
def test_what_cannot_be_planned_is_left_out_for_a_true_reason(problem, expected):
    plan = planned(problem)
    assert reasons(plan) == expected
    assert all(out["detail"].endswith(".") for out in plan["left_out"])
    assert audit_week(problem, plan) == []


def test_a_job_is_worth_doing_when_leaving_it_out_costs_a_penny_more():
    assert starts(planned(week(job("a", leave_out_cost=4301)))) == {"a": ("mon", "07:20")}


def test_every_part_of_the_cost_is_the_sum_in_the_contract():
    problem = week(job("a", **LATE), job("b", "far", leave_out_cost=50), shifts=[shift(cost_fixed=500)])
    plan = planned(problem)
    # a: 100 minutes at 40, 30 km at 10, 500 for the shift; one day late at 100; b left out at 50
    assert plan["cost"] == {"total": 4950, "shifts": 4800, "lateness": 100, "left_out": 50}
    assert plan["bound"] == 4950


def test_one_direct_road_is_not_assumed_to_be_the_shortest():
    table = matrix()
    table["minutes"][0][2] = 700
    plan = planned(week(job("a", "near"), job("b", "middle"), travel=table))
    assert starts(plan) == {"a": ("mon", "07:20"), "b": ("mon", "08:40")}


def test_the_clocks_going_forward_in_the_night_take_no_minute_from_the_work():
    night = shift(start="2026-03-29T00:00:00+00:00", end="2026-03-29T06:00:00+01:00")
    made = job("a", minutes=260, windows=[{"start": night["start"], "end": night["end"]}])
    problem = week(made, shifts=[night])
    plan = planned(problem)
    (stop,) = plan["shifts"][0]["stops"]
    assert (stop["start"], stop["finish"]) == ("2026-03-29T00:20:00+00:00", "2026-03-29T05:40:00+01:00")
    assert audit_week(problem, plan) == []
