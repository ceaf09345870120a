"""Plans as another program might print them: what keeps the contract passes in any shape, a breach is found in any.

All vary the plan drawn up by hand (fixtures/week_problems): Ann's Monday costs 40 a minute of work.
"""

import pytest

from tests.visits.domain.planning.audit.spoil import spoilt, week
from visits.domain.planning.audit import audit_week

DAY = "2026-03-02T"
A, B = "shifts.0", "shifts.1"
J1, J2, J3, J4 = (f"{A}.stops.{at}" for at in range(4))
MEAL = f"{A}.meal"


def eaten(start, end):
    return {"start": DAY + start, "end": DAY + end}


def longer_by(minutes):
    """The figures that follow when Ann is away so much longer."""
    return [
        (f"{A}.work_minutes", 550.5 + minutes),
        ("cost.shifts", 31676.25 + 40 * minutes),
        ("cost.total", 52776.25 + 40 * minutes),
    ]


VALID = [
    ("whole numbers with a point", [(f"{A}.cows", 50.0), (f"{J1}.days_late", 2.0), ("seed", 1.0), (f"{B}.km", 66.0)]),
    ("whole numbers without one", [(f"{B}.work_minutes", 110), ("seconds", 0), ("cost.lateness", 1000)]),
    ("a drive as late as can be", [(f"{J3}.arrive", DAY + "13:30:00Z")]),
    ("a drive in the middle of the gap, the meal before it", [(f"{J3}.arrive", DAY + "12:45:00Z")]),
    ("a drive that ends as the meal begins", [(f"{J3}.arrive", DAY + "12:00:00Z")]),
    ("a meal at the last stop before a late drive",
     [(f"{J3}.arrive", DAY + "12:20:00Z"), (MEAL, eaten("11:30:00Z", "12:00:00Z"))]),
    ("a meal at an odd tenth of a second", [(MEAL, eaten("12:03:07.4Z", "12:33:07.4Z"))]),
    ("a meal as early as it may be", [(MEAL, eaten("11:30:00Z", "12:00:00Z"))]),
    ("a meal that ends as the work begins", [(MEAL, eaten("13:00:00Z", "13:30:00Z"))]),
    ("a wait at the first farm", [(f"{A}.leave", DAY + "07:30:00Z"), *longer_by(10)]),
    ("a wait there after an early drive",
     [(f"{A}.leave", DAY + "07:20:00Z"), (f"{J1}.arrive", DAY + "07:40:00Z"), *longer_by(20)]),
    ("a wait at the last farm", [(f"{A}.return", DAY + "17:30:00Z"), *longer_by(39.5)]),
    ("a wait between two jobs on one farm, with the meal in it",
     [(f"{J2}.start", DAY + "12:00:00Z"), (f"{J2}.finish", DAY + "13:00:00Z"),
      (f"{J3}.arrive", DAY + "13:15:00Z"), (MEAL, eaten("11:30:00Z", "12:00:00Z"))]),
    ("arriving at the same farm twice",
     [(f"{J2}.arrive", DAY + "10:20:00Z"), (f"{J2}.start", DAY + "10:20:00Z"), (f"{J2}.finish", DAY + "11:20:00Z"),
      (f"{J3}.arrive", DAY + "11:35:00Z")]),
    ("tenths of a second",
     [(f"{J4}.start", DAY + "15:10:30.3Z"), (f"{J4}.finish", DAY + "16:10:30.3Z"), (f"{A}.return", DAY + "16:50:30.3Z"),
      *longer_by(0.005)]),
    ("offsets of other places",
     [(f"{A}.leave", DAY + "08:40:00+01:00"), (f"{J1}.start", DAY + "02:00:00-06:00"),
      (f"{J2}.start", "2026-03-03T00:00:00+14:00"), (f"{A}.return", DAY + "11:50:30-05:00")]),
    ("instants in the basic form", [(f"{A}.leave", "20260302T074000Z"), (f"{A}.return", "20260302T165030,0+0000")]),
    ("instants without seconds", [(f"{A}.leave", DAY + "07:40Z"), (f"{B}.return", DAY + "14:10+00")]),
    ("a bound of nothing, of the very cost, below nothing", [("bound", 0)]),
    ("a bound of the very cost", [("bound", 52776.25)]),
    ("a bound below nothing", [("bound", -1.5)]),
    ("another engine, another seed", [("engine", "by hand"), ("seed", 10**30), ("seconds", 3600)]),
]  # fmt: skip


@pytest.mark.parametrize("changes", [row[1] for row in VALID], ids=[row[0] for row in VALID])
def test_a_plan_in_an_unusual_shape_is_clean(changes):
    problem, plan = week("plain")
    assert audit_week(problem, spoilt(plan, *changes)) == []


def test_the_order_of_shifts_and_of_what_is_left_out_says_nothing():
    problem, plan = week("plain")
    turned = plan | {"shifts": plan["shifts"][::-1], "left_out": plan["left_out"][::-1]}
    assert audit_week(problem, dict(reversed(turned.items()))) == []


def test_shifts_of_one_crew_at_one_time_are_not_forbidden_by_the_contract():
    problem, plan = week("plain")
    crew = spoilt(
        problem,
        ("shifts.1.crew", "ann"),
        ("jobs.4.crews", ["ann"]),
        ("jobs.8.crews", ["ann"]),
        ("jobs.9.crews", ["ann"]),
    )
    lines = audit_week(crew, plan)
    assert not [line for line in lines if line.startswith("shifts")]


@pytest.mark.parametrize(
    ("meal", "told", "clean"),
    [
        (("14:00", "14:10", 30), ("14:10", "14:40"), True),  # home at 14:10, eaten there
        (("14:00", "14:09", 30), ("14:10", "14:40"), False),
        (("12:00", "12:30", 20), ("12:00", "12:20"), True),  # eaten before leaving at 12:20
        (("11:30", "12:30", 30), ("11:50", "12:20"), False),  # the shift begins at 12:00
        (("14:10", "15:00", 30), None, True),  # home as the meal time begins: none called for
        (("14:10", "15:00", 30), ("14:10", "14:40"), True),
        (("11:00", "12:20", 30), None, True),  # gone as the meal time ends
        (("13:30", "13:30", 0), None, True),  # a meal of no length
    ],
)
def test_a_gap_before_leaving_or_after_returning_counts_within_the_shift(meal, told, clean):
    problem, plan = week("plain")
    earliest, latest, minutes = meal
    rule = {"minutes": minutes, "earliest": f"{DAY}{earliest}:00Z", "latest": f"{DAY}{latest}:00Z"}
    printed = told and eaten(f"{told[0]}:00Z", f"{told[1]}:00Z")
    lines = audit_week(spoilt(problem, ("shifts.1.meal", rule)), spoilt(plan, (f"{B}.meal", printed)))
    assert (lines == []) is clean, lines


BREACHES = [
    ([(f"{A}.leave", DAY + "07:40:00+01:00")], "shifts[0].leave: is 20 min before the shift starts"),
    ([(f"{A}.leave", DAY + "07:40:00-01:00")], "shifts[0].stops[0].arrive: -40 min after it was free"),
    ([(f"{A}.leave", DAY + "07:40:00")], "shifts[0].leave: has no offset"),
    ([(f"{A}.leave", DAY + "07:40:00.2Z")], "shifts[0].stops[0].arrive: 19.997 min after it was free"),
    ([(f"{A}.leave", "2026-03-02 07:40:00Z")], "shifts[0].leave: is not an ISO 8601 instant"),
    ([(f"{J3}.arrive", DAY + "12:29:59Z")], "shifts[0].meal: somebody drives or works"),
    ([(f"{J3}.arrive", DAY + "12:40:00Z")], "shifts[0].meal: somebody drives or works"),
    ([(MEAL, eaten("13:00:01Z", "13:30:01Z"))], "shifts[0].meal: somebody drives or works"),
    ([(MEAL, eaten("10:45:00Z", "11:15:00Z"))], "shifts[0].meal.start: is 45 min before the earliest"),
    ([(MEAL, eaten("14:00:01Z", "14:30:01Z"))], "shifts[0].meal.start: is 1 s after the latest"),
    ([(MEAL, eaten("12:30:00Z", "12:00:00Z"))], "shifts[0].meal.end: the meal lasts -30 min"),
    ([(f"{J2}.start", DAY + "09:30:00Z"), (f"{J2}.finish", DAY + "10:30:00Z")],
     "shifts[0].stops[1].start: begins 30 min before it arrives"),
    ([(f"{J2}.arrive", DAY + "09:59:00Z")], "shifts[0].stops[1].arrive: -1 min after it was free"),
    ([(f"{J1}.arrive", DAY + "07:39:00Z")], "shifts[0].stops[0].arrive: -1 min after it was free"),
    ([(f"{J4}.finish", DAY + "16:11:30Z")], "shifts[0].return: 39 min after the last finish"),
    ([(f"{A}.return", DAY + "07:40:00Z")], "shifts[0].return: -510.5 min after the last finish"),
    ([(f"{A}.work_minutes", 550.504)], "shifts[0].work_minutes: says 550.504 min"),
    ([(f"{A}.km", 63.1235)], "shifts[0].km: says 63.124 km"),
    ([("cost.shifts", 31676.27), ("cost.total", 52776.27)], "cost.shifts: says 31676.27"),
    ([("cost.lateness", 1500), ("cost.total", 53276.25)], "cost.lateness: says 1500, it comes to 1000"),
    ([("left_out.5.reason", "no-room")], "left_out[5].reason: is not true, a fixed job"),
    ([("left_out.5.reason", "not-worth-it")], "left_out[5].reason: is not true"),
    ([("left_out.6.reason", "no-window-in-any-shift")], "left_out[6].reason: is not true, a window overlaps"),
    ([("left_out.6.reason", "too-long-for-any-window")], "left_out[6].reason: is not true, a window is long"),
    ([("left_out.6.reason", "No-Room")], "left_out[6].reason: No-Room is not a reason"),
    ([("left_out.6.detail", "")], "left_out[6].detail: is not a text"),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "breach"), BREACHES)
def test_a_breach_in_any_shape_is_named(changes, breach):
    problem, plan = week("plain")
    lines = audit_week(problem, spoilt(plan, *changes))
    assert any(line.startswith(breach) for line in lines), lines


def test_two_stops_that_change_places_are_out_of_order_in_time_and_hygiene():
    problem, plan = week("plain")
    stops = plan["shifts"][0]["stops"]
    lines = audit_week(problem, spoilt(plan, (f"{A}.stops", [*stops[:2], stops[3], stops[2]])))
    assert any(line.startswith("shifts[0].stops[3].arrive: -295.5 min after") for line in lines)
    assert "shifts[0].stops[3].job: hygiene 1 comes after j4 with 2" in lines
