"""Odd but well-formed week problems, one per row: each ends in an audited plan with the outcome the contract calls for.

Drives are 20 minutes from the yard to `near`, 40 to `middle`, 60 to `far`. `planned_and_audited` raises on a breach.
"""

import json

import pytest

from tests.visits.domain.planning.hand_made import job, matrix, monday, reasons, shift, starts, week, window
from visits.domain.planning.plan_week_problem import plan_week_problem
from visits.domain.planning.solve_limits import SolveLimits

ESTIMATE = {"kind": "estimate", "circuity": 1.35, "kmh": 50, "minutes_per_leg": 2}
TUESDAY_SIX = "2026-03-03T06:00:00+00:00"
TWINS = [shift(end=monday("13:00")), shift(id="mon2", end=monday("13:00"))]


def meal(earliest, latest, minutes=30):
    return {"minutes": minutes, "earliest": monday(earliest), "latest": monday(latest)}


def table(**changes):
    return matrix() | changes


def promise(clock):
    return {"shift": "mon", "start": monday(clock)}


def planned_and_audited(problem):
    plan, _ = plan_week_problem(json.dumps(problem), limits=SolveLimits(iterations=20))
    return json.loads(json.dumps(plan))


ROWS = [
    ("nothing at all", week(bases=[], sites=[], travel=table(places=[], minutes=[], km=[])) | {"shifts": []}, {}),
    ("a job of no cows and no minutes", week(job("a", minutes=0, cows=0)), {"a": "07:20"}),
    ("a window of one instant holds a job of none",
     week(job("a", minutes=0, windows=[window("10:00", "10:00")])), {"a": "10:00"}),
    ("a shift of one instant holds a job of none at no distance",
     week(job("a", minutes=0), shifts=[shift(end=monday("07:00"))], travel=table(minutes=[[0] * 4] * 4)),
     {"a": "07:00"}),
    ("a shift of one instant holds nothing else",
     week(job("a"), shifts=[shift(end=monday("07:00"))]), {"a": "no-window-in-any-shift"}),
    ("a farm at the yard's own place still takes the minutes per leg",
     week(job("a"), travel=ESTIMATE, bases=[{"id": "yard", "lat": 54.3, "lon": -2.4}]), {"a": "07:02"}),
    ("a table's diagonal counts for nothing",
     week(job("a", windows=[window("07:00", "08:30")]), job("b"), travel=table(minutes=[[9] * 4] * 4)),
     {"a": "07:09", "b": "08:09"}),
    ("a table may name places nobody uses",
     week(job("a"), travel={"kind": "matrix", "places": ["x", "yard", "near", "middle", "far"],
                            "minutes": [[5] * 5] * 5, "km": [[1] * 5] * 5}), {"a": "07:05"}),
    ("a road that takes for ever is a road nobody takes",
     week(job("a"), travel=table(minutes=[[1e300] * 4] * 4)), {"a": "no-room"}),
    ("a crawl is a road nobody takes", week(job("a"), travel=ESTIMATE | {"kmh": 1e-300}), {"a": "no-room"}),
    ("a job that takes for ever fits no window", week(job("a", minutes=1e300)), {"a": "too-long-for-any-window"}),
    ("windows that overlap are one each",
     week(job("a", minutes=150, windows=[window("09:00", "11:00"), window("10:00", "12:00")])),
     {"a": "too-long-for-any-window"}),
    ("windows that overlap: the later one holds it",
     week(job("a", minutes=90, windows=[window("09:00", "10:00"), window("09:45", "12:00")])), {"a": "09:45"}),
    ("the same window three times", week(job("a", windows=[window()] * 3)), {"a": "07:20"}),
    ("a window outside every shift",
     week(job("a", windows=[window("18:00", "20:00")])), {"a": "no-window-in-any-shift"}),
    ("shifts of one crew at one time are not forbidden",
     week(job("a", minutes=300), job("b", minutes=300), shifts=TWINS), {"a": "07:20", "b": "07:20"}),
    ("a promise before the shift",
     week(job("a", windows=[window("04:00", "12:00")], fixed=promise("05:00"))), {"a": "fixed-clash"}),
    ("a promise before the drive is over", week(job("a", fixed=promise("07:10"))), {"a": "fixed-clash"}),
    ("a promise just as the drive is over", week(job("a", fixed=promise("07:20"))), {"a": "07:20"}),
    ("a promise that cannot be kept and a price for leaving out",
     week(job("a", fixed=promise("07:10"), leave_out_cost=5)), {"a": "fixed-clash"}),
    ("a meal longer than the shift, after the round",
     week(job("a"), shifts=[shift(meal=meal("09:00", "10:00", 2000))]), {"a": "07:20"}),
    ("a meal longer than the shift, in the round's time",
     week(job("a", windows=[window("09:00", "10:00")]), shifts=[shift(meal=meal("09:00", "10:00", 2000))]),
     {"a": "no-room"}),
    ("a meal time after the shift", week(job("a"), shifts=[shift(meal=meal("20:00", "21:00"))]), {"a": "07:20"}),
    ("a meal time before the shift", week(job("a"), shifts=[shift(meal=meal("04:00", "05:00"))]), {"a": "07:20"}),
    ("a meal time that ends as the shift starts",
     week(job("a"), shifts=[shift(meal=meal("06:00", "07:00"))]), {"a": "07:20"}),
    ("a meal of no minutes needs no gap",
     week(job("a", minutes=580), shifts=[shift(meal=meal("12:00", "13:00", 0))]), {"a": "07:20"}),
    ("a meal that may begin at one instant only, in a long job",
     week(job("a", minutes=500), shifts=[shift(meal=meal("12:00", "12:00"))]), {"a": "no-room"}),
    ("no work allowed", week(job("a"), shifts=[shift(max_work_minutes=0)]), {"a": "no-room"}),
    ("no cows allowed", week(job("a", cows=1), job("b"), shifts=[shift(max_cows=0)]), {"a": "no-room", "b": "07:20"}),
    ("nothing costs anything: what may be left out for nothing may be done too",
     week(job("a"), shifts=[shift(cost_per_work_hour=0, cost_per_km=0)]), {"a": "07:20"}),
    ("leaving out for nothing", week(job("a", leave_out_cost=0)), {"a": "not-worth-it"}),
    ("a price of lateness without a due day", week(job("a", late_cost_per_day=10**9)), {"a": "07:20"}),
    ("a due day without a price of lateness", week(job("a", due="2026-02-01")), {"a": "07:20"}),
    ("due in the year 1", week(job("a", due="0001-01-01", late_cost_per_day=1)), {"a": "07:20"}),
    ("due in the year 9999", week(job("a", due="9999-12-31", late_cost_per_day=1)), {"a": "07:20"}),
    ("huge costs everywhere",
     week(job("a", due="1971-01-01", late_cost_per_day=10**12),
          shifts=[shift(cost_fixed=10**12, cost_per_km=10**12, cost_per_work_hour=10**12)]), {"a": "07:20"}),
    ("a shift over midnight",
     week(job("a", windows=[{"start": monday("23:30"), "end": TUESDAY_SIX}]),
          shifts=[shift(start=monday("21:00"), end=TUESDAY_SIX)]), {"a": "23:30"}),
    ("names of odd signs", week(job(" "), job("\0"), job("ü" * 1000)), {" ": None, "\0": None, "ü" * 1000: None}),
]  # fmt: skip


@pytest.mark.parametrize(("problem", "outcome"), [row[1:] for row in ROWS], ids=[row[0] for row in ROWS])
def test_an_odd_problem_has_the_outcome_of_the_contract(problem, outcome):
    plan = planned_and_audited(problem)
    found = reasons(plan) | {name: clock for name, (_, clock) in starts(plan).items()}
    assert found.keys() == outcome.keys()
    assert {name: found[name] for name, what in outcome.items() if what} == {
        name: what for name, what in outcome.items() if what
    }


def test_on_the_long_night_of_the_year_four_hours_fit_between_midnight_and_three():
    """25 October 2026: clocks in London go back from 02:00 to 01:00; 00:00 to 03:00 on the wall is four hours."""
    night = {"start": "2026-10-25T00:00:00+01:00", "end": "2026-10-25T03:00:00+00:00"}
    problem = week(job("a", minutes=200, windows=[night]), shifts=[shift(**night)])
    (day,) = planned_and_audited(problem)["shifts"]
    assert (day["work_minutes"], day["return"]) == (240, "2026-10-25T03:00:00+00:00")


@pytest.mark.parametrize(("due", "days"), [("2026-03-01", 2), ("2026-03-02", 1), ("2026-03-03", 0)])
def test_lateness_is_counted_on_the_calendar_of_the_zone_not_of_utc(due, days):
    """13:30 UTC on Monday is half past two on Tuesday night in Auckland (13 hours ahead in March)."""
    late = job("a", windows=[window("13:30", "14:30")], due=due, late_cost_per_day=7)
    plan = planned_and_audited(week(late, timezone="Pacific/Auckland"))
    assert plan["cost"]["lateness"] == 7 * days
    assert plan["shifts"][0]["stops"][0]["days_late"] == days


def test_figures_finer_than_the_grain_everywhere_still_end_in_an_audited_plan():
    third = {"start": "2026-03-02T07:00:00.333333Z", "end": "2026-03-02T17:00:00.666666Z"}
    legs = [[0 if a == b else 7 / 3 for b in range(4)] for a in range(4)]
    jobs = [job(f"j{at}", site, 11 / 7, windows=[third]) for at, site in enumerate(["near", "middle", "far"])]
    eaten = meal("12:00", "13:00", 29.99999)
    problem = week(*jobs, shifts=[shift(**third, meal=eaten)], travel=table(minutes=legs, km=legs))
    assert len(starts(planned_and_audited(problem))) == 3
