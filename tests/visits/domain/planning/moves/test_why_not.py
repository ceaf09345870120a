"""The rule that stands in a stop's way, one day made for each."""

import pytest

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.moves.why_not import Rule, why_not

MEAL = {"minutes": 30, "earliest": monday("11:00"), "latest": monday("12:00")}
OTHER_DAY = [{"start": "2026-03-04T07:00:00+00:00", "end": "2026-03-04T17:00:00+00:00"}]
TUESDAY = shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:00:00+00:00")
PROMISED = {"shift": "tue", "start": "2026-03-03T09:00:00+00:00"}
AT_NINE = {"start": "2026-03-03T09:00:00+00:00", "end": "2026-03-03T10:00:00+00:00"}
WHOLE_DAY = [window("07:40", "16:30")]
# name -> (problem, order, rule, job, beside, over)
DAYS = {
    "another van's": (week(job("a", crews=["ben"])), (0,), Rule.CREW, 0, None, 0),
    "promised to another day": (
        week(job("a", fixed=PROMISED, windows=[AT_NINE]), shifts=[shift(), TUESDAY]),
        (0,),
        Rule.HELD,
        0,
        None,
        0,
    ),
    "no hours on this day": (week(job("a", windows=OTHER_DAY)), (0,), Rule.NO_HOURS, 0, None, 0),
    "cows": (
        week(job("a", cows=30), job("b", cows=35), shifts=[shift(max_cows=60)]),
        (0, 1),
        Rule.COWS,
        None,
        None,
        5,
    ),
    "hygiene": (
        week(job("a", "far"), job("b", "near"), hygiene={"far": 2, "near": 1}),
        (0, 1),
        Rule.HYGIENE,
        1,
        0,
        0,
    ),
    "its own hours": (
        week(job("a", minutes=120), job("b", windows=[window("08:00", "09:30")])),
        (0, 1),
        Rule.TOO_LATE,
        1,
        None,
        50 * 600,
    ),
    "home too late": (
        week(job("a", minutes=300), job("b", minutes=300)),
        (0, 1),
        Rule.HOME_LATE,
        None,
        None,
        10 * 600,
    ),
    "a long day": (
        week(job("a", minutes=300), job("b", minutes=200), shifts=[shift(max_work_minutes=480)]),
        (0, 1),
        Rule.LONG_DAY,
        None,
        None,
        60 * 600,
    ),
    "no meal": (
        week(job("a", minutes=520, windows=WHOLE_DAY), shifts=[shift(meal=MEAL)]),
        (0,),
        Rule.MEAL,
        None,
        None,
        0,
    ),
    "no meal and a long day": (
        week(
            job("a", minutes=520, windows=WHOLE_DAY),
            shifts=[shift(meal=MEAL, max_work_minutes=500)],
        ),
        (0,),
        Rule.MEAL_OR_LONG_DAY,
        None,
        None,
        0,
    ),
}


@pytest.mark.parametrize(("problem", "order", "rule", "at", "beside", "over"), DAYS.values(), ids=DAYS)
def test_the_rule_is_named_with_whose_it_is_and_by_how_much(problem, order, rule, at, beside, over):
    known = board(problem)
    assert known.timing(0, order) is None
    found = why_not(known, 0, order)
    assert (found.rule, found.job, found.beside, found.over) == (rule, at, beside, over)


def test_a_day_that_can_be_done_has_nothing_in_its_way():
    assert why_not(board(week(job("a"), job("b", "far"))), 0, (0, 1)) is None
