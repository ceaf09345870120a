"""Rooms against the timing that planning uses: nothing lost, nothing offered that breaks a rule."""

import json
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.offers.standing import can_start, standing, standing_weeks
from visits.domain.planning.board import Board
from visits.domain.planning.measures import written
from visits.domain.planning.offers.guest import board_with, guest_of
from visits.domain.planning.offers.order_figures import OrderFigures
from visits.domain.planning.offers.room import rooms
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.retime import best_timing

MEAL = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}


def clocks(problem, order, at, shift_at=0):
    """The rooms of the last job of a hand-made problem at that position, as clock times."""
    week_of, new = standing(problem, *([order] if shift_at == 0 else [(), order]))
    whole, guest = board_with(week_of.board, new)
    found = rooms(week_of.figures(shift_at), guest, at)
    zone = whole.problem.zone
    return [(written(room.first, zone)[11:16], written(room.last, zone)[11:16]) for room in found]


CASES = [
    ("an empty day is free but for the drives", week(job("new")), (), 0, [("07:20", "16:10")]),
    (
        "before a promise there must be time for the drive",
        week(job("a", "far", fixed={"shift": "mon", "start": monday("12:00")}), job("new")),
        (0,),
        0,
        [("07:20", "10:20")],
    ),
    (
        "after a promise too",
        week(job("a", "far", fixed={"shift": "mon", "start": monday("12:00")}), job("new")),
        (0,),
        1,
        [("13:40", "16:10")],
    ),
    (
        "two windows are two rooms",
        week(job("new", windows=[window("09:00", "10:30"), window("13:00", "14:00")])),
        (),
        0,
        [("09:00", "09:30"), ("13:00", "13:00")],
    ),
    (
        "windows that meet are two rooms too: no job runs over from one into the other",
        week(job("new", windows=[window("09:00", "10:30"), window("10:30", "12:00")])),
        (),
        0,
        [("09:00", "09:30"), ("10:30", "11:00")],
    ),
    (
        "work of just the limit leaves one moment",
        week(
            job("a", fixed={"shift": "mon", "start": monday("09:00")}),
            job("new"),
            shifts=[shift(max_work_minutes=160)],
        ),
        (0,),
        1,
        [("10:00", "10:00")],
    ),
    (
        "the meal is eaten before, between or after, or one is home",
        week(job("new", minutes=120), shifts=[shift(meal=MEAL)]),
        (),
        0,
        [("07:20", "15:10")],
    ),
    (
        "the meal falls behind the new job or before it",
        week(
            job("a", "near", 200, fixed={"shift": "mon", "start": monday("07:20")}),
            job("b", "near", 180, fixed={"shift": "mon", "start": monday("14:00")}),
            job("new", "near", 120),
            shifts=[shift(meal=MEAL)],
        ),
        (0, 1),
        1,
        [("10:40", "11:30"), ("12:00", "12:00")],
    ),
    (
        "a cleaner herd is not seen after a worse one",
        week(job("a", "near"), job("new", "far"), hygiene={"near": 2, "far": 1}),
        (0,),
        1,
        [],
    ),
    (
        "herds of one level go either way round",
        week(job("a", "near"), job("new", "far"), hygiene={"near": 2, "far": 2}),
        (0,),
        1,
        [("09:00", "15:30")],
    ),
    (
        "cows of just the limit are allowed",
        week(job("a", cows=4), job("new", cows=5), shifts=[shift(max_cows=9)]),
        (0,),
        1,
        [("08:20", "16:10")],
    ),
    (
        "one cow more is not",
        week(job("a", cows=4), job("new", cows=6), shifts=[shift(max_cows=9)]),
        (0,),
        1,
        [],
    ),
    ("another crew's job has no room", week(job("new", crews=["ben"])), (), 0, []),
]


@pytest.mark.parametrize(
    ("problem", "order", "at", "expected"), [c[1:] for c in CASES], ids=[c[0] for c in CASES]
)
def test_rooms_by_hand(problem, order, at, expected):
    assert clocks(problem, order, at) == expected


def test_a_day_on_which_the_clocks_change_has_the_hours_it_has():
    night = shift(start="2026-03-29T00:00:00+00:00", end="2026-03-29T05:00:00+01:00")
    free = {"start": "2026-03-29T00:00:00+00:00", "end": "2026-03-29T06:00:00+01:00"}
    # four hours between midnight and five o'clock, two drives of 20 minutes, an hour of work
    assert clocks(week(job("new", windows=[free]), shifts=[night]), (), 0) == [("00:20", "03:40")]


@settings(
    max_examples=examples(150), suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow]
)
@given(standing_weeks(), st.randoms(use_true_random=False))
def test_every_start_in_a_room_keeps_every_rule_and_no_other_start_does(made, chance: Random):
    week_of, new = made
    whole, guest = board_with(week_of.board, new)
    for shift_at, order in enumerate(week_of.week):
        for at in range(len(order) + 1):
            found = rooms(week_of.figures(shift_at), guest, at)
            if not guest.openings[shift_at]:
                assert not found
                continue
            longer = (*order[:at], guest.at, *order[at:])
            assert bool(found) == (whole.timing(shift_at, longer) is not None)
            if not whole.allowed(shift_at, longer):
                continue
            route = whole.route(shift_at, longer)
            for moment in moments(found, guest.openings[shift_at], chance):
                held = can_start(route, at, moment)
                good = held is not None and best_timing(held) is not None
                assert good == any(room.first <= moment <= room.last for room in found), moment


def moments(found, opened, chance):
    """Both sides of each edge, and some moments between."""
    edges = {edge for span in (*found, *opened) for edge in (span.first, span.last)}
    between = {chance.randint(span.first, span.last) for span in (*found, *opened) for _ in range(2)}
    return edges | {edge - 1 for edge in edges} | {edge + 1 for edge in edges} | between


@settings(
    max_examples=examples(100), suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow]
)
@given(standing_weeks())
def test_the_worth_of_a_room_is_the_least_cost_of_the_timing(made):
    week_of, new = made
    whole, guest = board_with(week_of.board, new)
    for shift_at, order in enumerate(week_of.week):
        figures = week_of.figures(shift_at)
        for at in range(len(order) + 1):
            found = rooms(figures, guest, at)
            if found and figures.late is not None:
                timing = whole.timing(shift_at, (*order[:at], guest.at, *order[at:]))
                assert min(room.worth for room in found) + figures.late == pytest.approx(
                    timing.cost, abs=1e-6
                )


def test_a_job_of_the_problem_can_ask_for_room_as_well():
    whole = Board(read_problem(json.dumps(week(job("a"), job("b")))))
    assert rooms(OrderFigures(whole, 0, (0,)), guest_of(whole, 1), 1) != []
    assert board(week(job("a"))).problem.jobs[0].id == "a"
