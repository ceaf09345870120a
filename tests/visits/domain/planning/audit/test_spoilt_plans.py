"""Each rule and each figure spoilt in turn in a clean plan: the audit names the place and the breach."""

import pytest

from tests.visits.domain.planning.audit.spoil import GONE, spoilt, week
from visits.domain.planning.audit import audit_week

DAY = "2026-03-02T"
A, B = "shifts.0", "shifts.1"
S = "shifts[0].stops"

TIMES = [
    ([(f"{A}.leave", DAY + "06:59:59Z")], "shifts[0].leave: is 1 s before the shift starts"),
    ([(f"{A}.leave", DAY + "06:40:00Z")], "shifts[0].return: 610.5 min after leaving, more than the 600"),
    ([(f"{A}.leave", DAY + "07:41:00Z")], f"{S}[0].arrive: 19 min after it was free to drive"),
    ([(f"{A}.leave", DAY + "16:51:30Z")], "shifts[0].return: is 1 min before leaving"),
    ([(f"{A}.return", DAY + "17:31:00Z")], "shifts[0].return: is 1 min after the shift ends"),
    ([(f"{A}.return", DAY + "16:50:00Z")], "shifts[0].return: 39.5 min after the last finish"),
    ([(f"{B}.leave", DAY + "11:59:00Z")], "shifts[1].leave: is 1 min before"),
    ([(f"{A}.stops.2.arrive", DAY + "11:14:59Z")], f"{S}[2].arrive: 14.983 min after it was free"),
    ([(f"{A}.stops.2.arrive", DAY + "13:42:00Z")], f"{S}[2].start: begins 12 min before it arrives"),
    ([(f"{A}.stops.2.arrive", DAY + "12:15:00Z")], "shifts[0].meal: somebody drives or works during it"),
    ([(f"{A}.stops.0.start", DAY + "07:59:00Z")], f"{S}[0].start: begins 1 min before it arrives"),
    ([(f"{A}.stops.0.start", DAY + "07:59:59.8Z")], f"{S}[0].start: the work is not whole inside one window"),
    ([(f"{A}.stops.0.finish", DAY + "09:59:00Z")], f"{S}[0].finish: the work lasts 119 min"),
    ([(f"{A}.stops.0.finish", DAY + "10:00:01Z")], f"{S}[1].arrive: -1 s after it was free"),
    ([(f"{A}.stops.1.start", DAY + "12:00:01Z"), (f"{A}.stops.1.finish", DAY + "13:00:01Z")],
     f"{S}[1].start: the work is not whole inside one window of j2"),
    ([(f"{A}.stops.3.finish", DAY + "17:00:01Z")], f"{S}[3].start: the work is not whole inside"),
    ([(f"{A}.stops.2.start", DAY + "13:29:00Z")], f"{S}[2].start: is fixed at 2026-03-02T13:30:00+00:00"),
    ([(f"{A}.stops.1.start", DAY + "10:31:00Z"), (f"{A}.stops.1.finish", DAY + "11:31:00Z")],
     f"{S}[2].arrive: -16 min after"),
]  # fmt: skip
FIGURES = [
    ([(f"{A}.work_minutes", 550.49)], "shifts[0].work_minutes: says 550.49 min, it is 550.5 min"),
    ([(f"{A}.km", 63.127)], "shifts[0].km: says 63.127 km, the drives add up to 63.125 km"),
    ([(f"{A}.cows", 49)], "shifts[0].cows: says 49, the jobs add up to 50"),
    ([(f"{B}.work_minutes", -110)], "shifts[1].work_minutes: says -110 min"),
    ([(f"{A}.stops.1.travel_minutes", 5)], f"{S}[1].travel_minutes: says 5 min, the drive takes 0 s"),
    ([(f"{A}.stops.3.travel_minutes", 10.51)], f"{S}[3].travel_minutes: says 10.51 min"),
    ([(f"{A}.stops.1.km", 1)], f"{S}[1].km: says 1 km, the drive is 0 km"),
    ([(f"{A}.stops.2.km", 9.123)], f"{S}[2].km: says 9.123 km, the drive is 9.125 km"),
    ([(f"{A}.stops.0.days_late", 1)], f"{S}[0].days_late: says 1, it is 2"),
    ([(f"{A}.stops.3.days_late", -2)], f"{S}[3].days_late: says -2, it is 0"),
    ([("cost.total", 52776.27)], "cost.total: says 52776.27, it comes to 52776.25"),
    ([("cost.shifts", 31676)], "cost.shifts: says 31676, it comes to 31676.25"),
    ([("cost.lateness", 0)], "cost.lateness: says 0, it comes to 1000"),
    ([("cost.left_out", 100)], "cost.left_out: says 100, it comes to 20100"),
    ([("bound", 52776.5)], "bound: 52776.5 is above the cost of this very plan"),
]
MEAL = [
    ([(f"{A}.meal", None)], "shifts[0].meal: is not printed"),
    ([(f"{A}.meal.end", DAY + "12:29:00Z")], "shifts[0].meal.end: the meal lasts 29 min, not 30 min"),
    ([(f"{A}.meal.start", DAY + "11:29:00Z")], "shifts[0].meal.start: is 1 min before the earliest"),
    ([(f"{A}.meal", {"start": DAY + "14:01:00Z", "end": DAY + "14:31:00Z"})],
     "shifts[0].meal.start: is 1 min after the latest"),
    ([(f"{A}.meal", {"start": DAY + "13:01:00Z", "end": DAY + "13:31:00Z"})],
     "shifts[0].meal: somebody drives or works during it"),
    ([(f"{B}.meal", {"start": DAY + "12:00:00Z", "end": DAY + "12:30:00Z"})],
     "shifts[1].meal: this shift has no meal to keep"),
]  # fmt: skip
LISTS = [
    ([(f"{A}.id", "wed-eve")], "shifts[0].id: there is no shift wed-eve"),
    ([(f"{B}.id", "mon-ann")], "shifts[1].id: shift mon-ann is used twice"),
    ([(f"{B}.id", "tue-ann")], "shifts[1].stops[0].job: may not be done by crew ann"),
    ([(f"{B}.stops", [])], "shifts[1].stops: a used shift has at least one"),
    ([(f"{B}.stops", [])], "left_out: j5 is neither planned nor left out"),
    ([(f"{B}.stops.0.job", "j77")], "shifts[1].stops[0].job: there is no job j77"),
    ([(f"{B}.stops.0.job", "j1")], "shifts[1].stops[0].job: j1 is planned twice"),
    ([(f"{B}.stops.0.job", "j3")], "shifts[1].stops[0].job: is fixed on shift mon-ann"),
    ([("left_out.0.job", "j1")], "left_out[0].job: j1 is both planned and left out"),
    ([("left_out.0.job", "j7")], "left_out[1].job: j7 is left out twice"),
    ([("left_out.0.job", "j99")], "left_out[0].job: there is no job j99"),
    ([("left_out.0", GONE)], "left_out: j6 is neither planned nor left out"),
]
REASONS = [
    ([("left_out.0.reason", "no-time")], "left_out[0].reason: no-time is not a reason"),
    ([("left_out.6.reason", "no-crew")], "left_out[6].reason: is not true, crew ann of mon-ann"),
    ([("left_out.3.reason", "no-window-in-any-shift")], "left_out[3].reason: is not true, a window overlaps"),
    ([("left_out.4.reason", "too-long-for-any-window")], "left_out[4].reason: is not true, a window is long"),
    ([("left_out.4.reason", "fixed-clash")], "left_out[4].reason: is not true, the job is not fixed"),
    (
        [("left_out.4.reason", "not-worth-it")],
        "left_out[4].reason: is not true, the job has no leave-out cost",
    ),
    ([("left_out.3.reason", "hygiene-clash")], "left_out[3].reason: is not true, no herd of another hygiene"),
    ([("left_out.3.reason", "no-room")], "left_out[3].reason: is not true, it fits into mon-bob"),
    ([("left_out.0.reason", "no-room")], "left_out[0].reason: is not true, no shift has a crew"),
    ([("left_out.1.reason", "no-room")], "left_out[1].reason: is not true, the job is too long"),
    ([("left_out.2.reason", "no-room")], "left_out[2].reason: is not true, no window lies in any"),
]


@pytest.mark.parametrize(("changes", "breach"), TIMES + FIGURES + MEAL + LISTS + REASONS)
def test_a_spoilt_plan_has_the_breach(changes, breach):
    problem, plan = week("plain")
    assert any(line.startswith(breach) for line in audit_week(problem, spoilt(plan, *changes)))


@pytest.mark.parametrize("figure", [row for row in FIGURES if row[0][0][0] != "bound"])
def test_a_spoilt_figure_is_the_only_breach(figure):
    problem, plan = week("plain")
    changes, breach = figure
    (line,) = audit_week(problem, spoilt(plan, *changes))
    assert line.startswith(breach)
