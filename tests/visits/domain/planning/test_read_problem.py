"""Reading a week problem: one row per way to get it wrong, each with the line that must be shown."""

import copy
import json

import pytest

from tests.visits.domain.planning.hand_made import job, monday, shift, week, window
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.read_problem import read_problem

MEAL = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}
ESTIMATE = {"kind": "estimate", "circuity": 1.35, "kmh": 48, "minutes_per_leg": 2}
GOOD = week(
    job(
        "j0", cows=3, due="2026-03-04", late_cost_per_day=5, fixed={"shift": "mon", "start": monday("10:00")}
    ),
    job("j1", "far", leave_out_cost=10, crews=["ann"]),
    shifts=[shift(meal=MEAL, max_cows=50, max_work_minutes=600)],
)
REMOVE = object()


def changed(path, value):
    """GOOD with the value at `path` (keys and indexes) replaced, added or removed."""
    problem = copy.deepcopy(GOOD)
    *way, last = path
    spot = problem
    for step in way:
        spot = spot[step]
    if value is REMOVE:
        del spot[last]
    else:
        spot[last] = value
    return problem


ROWS = [
    (("format",), "trimops-week-problem/2", 'format: must be "trimops-week-problem/1"'),
    (("format",), REMOVE, "format: is missing"),
    (("jobs",), REMOVE, "jobs: is missing"),
    (("jobs",), {}, "jobs: is not a list"),
    (("colour",), "red", "colour: is not a key of a week problem"),
    (("timezone",), "Mars/Olympus", "timezone: is not a time zone of the IANA list"),
    (("timezone",), "../etc/passwd", "timezone: is not a time zone of the IANA list"),
    (("timezone",), "Europe", "timezone: is not a time zone of the IANA list"),
    (("timezone",), 5, "timezone: is not a time zone of the IANA list"),
    (("bases", 0, "lat"), 90.5, "bases[0].lat: must be 90 or less"),
    (("bases", 0, "lon"), -180.01, "bases[0].lon: must be -180 or more"),
    (("bases", 0, "lat"), "54.2", "bases[0].lat: is not a number"),
    (("bases", 0, "lat"), True, "bases[0].lat: is not a number"),
    (("bases", 0, "id"), "", "bases[0].id: is empty"),
    (("bases", 0), "yard", "bases[0]: is not an object"),
    (("sites", 0, "hygiene"), -1, "sites[0].hygiene: must not be negative"),
    (("sites", 0, "hygiene"), 1.5, "sites[0].hygiene: is not a whole number"),
    (("sites", 1, "id"), "near", 'sites[1].id: "near" is already the id of sites[0]'),
    (("sites", 1, "id"), "yard", 'sites[1].id: "yard" is the id of a base'),
    (("sites", 0, "colour"), 1, "sites[0].colour: is not a key that belongs here"),
    (("travel",), [], "travel: is not an object"),
    (("travel", "kind"), "crow", 'travel.kind: must be "matrix" or "estimate"'),
    (("travel", "places"), ["yard", "near", "middle"], 'travel.places: "far" is missing'),
    (("travel", "places", 3), "near", 'travel.places[3]: "near" is given twice'),
    (("travel", "minutes", 2), [0, 1], "travel.minutes[2]: has 2 numbers for 4 places"),
    (("travel", "km"), [[0]], "travel.km: has 1 rows for 4 places"),
    (("travel", "minutes", 0, 1), -1, "travel.minutes[0][1]: must not be negative"),
    (("travel", "km", 1, 0), float("nan"), "travel.km[1][0]: is not a finite number"),
    (("travel", "km", 1, 0), float("inf"), "travel.km[1][0]: is not a finite number"),
    (("travel", "km", 1, 0), None, "travel.km[1][0]: is not a number"),
    (("travel",), ESTIMATE | {"kmh": 0}, "travel.kmh: must be more than 0"),
    (("travel",), ESTIMATE | {"circuity": -1.3}, "travel.circuity: must be more than 0"),
    (("travel",), ESTIMATE | {"minutes_per_leg": -2}, "travel.minutes_per_leg: must not be negative"),
    (("shifts", 0, "base"), "barn", 'shifts[0].base: "barn" is no base of this problem'),
    (("shifts", 0, "end"), monday("06:59"), "shifts[0].end: is before its start"),
    (
        ("shifts", 0, "start"),
        "2026-03-02T07:00:00",
        "shifts[0].start: is not an ISO 8601 instant with offset",
    ),
    (
        ("shifts", 0, "start"),
        "2026-02-30T07:00:00Z",
        "shifts[0].start: is not a date and time of the calendar",
    ),
    (("shifts", 0, "start"), "1066-03-02T07:00:00Z", "shifts[0].start: must lie in the years 1971 to 2199"),
    (("shifts", 0, "start"), 1772434800, "shifts[0].start: is not text"),
    (("shifts", 0, "meal", "latest"), monday("11:00"), "shifts[0].meal.latest: is before its earliest"),
    (("shifts", 0, "meal", "minutes"), -30, "shifts[0].meal.minutes: must not be negative"),
    (("shifts", 0, "max_work_minutes"), -1, "shifts[0].max_work_minutes: must not be negative"),
    (("shifts", 0, "max_cows"), False, "shifts[0].max_cows: is not a whole number"),
    (("shifts", 0, "cost_per_km"), "45", "shifts[0].cost_per_km: is not a number"),
    (("shifts",), [shift(), shift()], 'shifts[1].id: "mon" is already the id of shifts[0]'),
    (("jobs", 0, "minutes"), REMOVE, "jobs[0].minutes: is missing"),
    (("jobs", 0, "minutes"), -5, "jobs[0].minutes: must not be negative"),
    (("jobs", 0, "minutes"), 10**400, "jobs[0].minutes: is not a number"),
    (("jobs", 0, "leave_out_cost"), 10**13, "jobs[0].leave_out_cost: must be 1000000000000 or less"),
    (("jobs", 0, "cows"), 2.5, "jobs[0].cows: is not a whole number"),
    (("jobs", 0, "site"), "moon", 'jobs[0].site: "moon" is no site of this problem'),
    (("jobs", 1, "id"), "j0", 'jobs[1].id: "j0" is already the id of jobs[0]'),
    (("jobs", 0, "windows"), [window("12:00", "11:00")], "jobs[0].windows[0].end: is before its start"),
    (
        ("jobs", 0, "windows", 0, "end"),
        "noon",
        "jobs[0].windows[0].end: is not an ISO 8601 instant with offset",
    ),
    (("jobs", 0, "crews"), "ann", "jobs[0].crews: is not a list"),
    (("jobs", 0, "due"), "4 March", "jobs[0].due: is not a day written as 2026-03-04"),
    (("jobs", 0, "due"), "2026-13-04", "jobs[0].due: is not a day of the calendar"),
    (("jobs", 0, "leave_out_cost"), -1, "jobs[0].leave_out_cost: must not be negative"),
    (("jobs", 0, "fixed", "shift"), "tue", 'jobs[0].fixed.shift: "tue" is no shift of this problem'),
    (("jobs", 0, "fixed", "start"), REMOVE, "jobs[0].fixed.start: is missing"),
]


@pytest.mark.parametrize(("path", "value", "line"), ROWS)
def test_a_fault_is_named_with_its_path(path, value, line):
    with pytest.raises(ProblemFaults) as caught:
        read_problem(json.dumps(changed(path, value)))
    assert any(fault.startswith(line) for fault in caught.value.faults), caught.value.faults


def test_the_problem_that_the_table_spoils_has_no_fault_itself():
    assert len(read_problem(json.dumps(GOOD)).jobs) == 2


def test_all_faults_are_told_at_once():
    spoilt = changed(("jobs", 0, "windows"), [window("12:00", "11:00")])
    spoilt["jobs"][1]["minutes"] = "long"
    spoilt["shifts"][0]["base"] = "barn"
    with pytest.raises(ProblemFaults) as caught:
        read_problem(json.dumps(spoilt))
    assert caught.value.faults == [
        "jobs[1].minutes: is not a number",
        'shifts[0].base: "barn" is no base of this problem',
        "jobs[0].windows[0].end: is before its start",
    ]


def test_figures_finer_than_a_tenth_of_a_second_are_rounded_half_up_and_named():
    problem = read_problem(json.dumps(changed(("jobs", 1, "minutes"), 10.00075)))
    assert problem.jobs[1].length == 6000
    assert problem.notes == ("jobs[1].minutes: rounded to a tenth of a second",)


def test_a_crew_without_a_shift_is_no_fault_since_no_crew_is_a_reason_of_the_contract():
    assert read_problem(json.dumps(changed(("jobs", 1, "crews"), ["zoe"]))).jobs[1].crews == {"zoe"}
