"""Limits in minutes on weeks made by hand; the least by brute force is in test_ways."""

import pytest

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.reasons.making_room.by_minutes import minutes_that_make_room

MEAL = {"minutes": 30, "earliest": monday("12:00"), "latest": monday("13:00")}


def ways(problem, orders=((),), out=0):
    found = minutes_that_make_room(board(problem), orders, out)
    return {r.code: r.figures["minutes"] for r in found}


@pytest.mark.parametrize(
    ("problem", "code", "minutes"),
    [
        (week(job("a", windows=[window("09:00", "09:43")])), "window-end", 17),
        (week(job("a", windows=[window("09:00", "09:43")])), "window-start", 17),
        (week(job("a", windows=[window("09:00", "09:43")])), "shorter-visit", 17),
        (week(job("a"), shifts=[shift(max_work_minutes=99)]), "work-limit", 1),
        (week(job("a"), shifts=[shift(end=monday("08:30"))]), "shift-end", 10),
        (week(job("a", windows=[window("07:10", "08:10")])), "shift-start", 10),
        (week(job("a"), shifts=[shift(end=monday("08:30"), max_work_minutes=90)]), "longer-day", 10),
        (
            week(
                job("a", minutes=295, windows=[window("07:20", "17:30")]),
                shifts=[shift(end=monday("12:55"), meal=MEAL | {"latest": monday("12:30")})],
            ),
            "meal",
            10,
        ),
    ],
)
def test_the_limit_gives_way_by_the_least(problem, code, minutes):
    assert ways(problem)[code] == minutes


def test_both_ends_of_a_day_are_named_only_where_neither_alone_does():
    assert "longer-day" not in ways(week(job("a"), shifts=[shift(max_work_minutes=99)]))
    both = ways(week(job("a"), shifts=[shift(end=monday("08:30"), max_work_minutes=90)]))
    assert not both.keys() & {"work-limit", "shift-end"}


def test_parts_of_a_minute_are_not_enough():
    assert ways(week(job("a", minutes=60.5, windows=[window("09:00", "10:00")])))["window-end"] == 1


def test_more_than_four_hours_is_no_way():
    shut = week(job("a", minutes=300, windows=[window("09:00", "09:59")]))
    assert "window-end" not in ways(shut)
    open_ = week(job("a", minutes=300, windows=[window("09:00", "10:00")]))
    assert ways(open_)["window-end"] == 240


def test_a_promise_can_be_made_later_or_earlier():
    kept = job("a", fixed={"shift": "mon", "start": monday("09:00")})
    clash = job("b", fixed={"shift": "mon", "start": monday("09:30")})
    assert ways(week(kept, clash), ((0,),), 1) == {"promise-later": 30, "promise-earlier": 90}
