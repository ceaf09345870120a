from dataclasses import replace
from datetime import date, timedelta

import pytest

from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState, Hand
from visits.domain.kit.edge_life import EdgeLife
from visits.domain.kit.edge_lives import Edge, EdgeEnd
from visits.domain.kit.edge_outlook import edge_outlook
from visits.domain.kit.grinding_plan import DayOfCows, grinding_plan
from visits.models import Blade, Van
from visits.selectors.kit.blade_grinding import GrindingDay, JobGrinding, VanGrinding
from visits.selectors.kit.blade_words import (
    day_name,
    edge_words,
    interval_words,
    of_100,
    state_mark,
    van_answer,
)
from visits.selectors.kit.van_edges import BladeEdge

LIFE = EdgeLife((1.0,) * 10 + tuple(1 - n / 10 for n in range(1, 10)), 30)
FIGURE = EdgeLife((1.0,) * 26, is_practice=True)
MONDAY = date(2026, 3, 2)


def edge(
    cows=0, life=LIFE, end=EdgeEnd.IN_USE, pk=1, state=BladeState.IN_USE, fault="", kind=BladeKind.HOOF_KNIFE
):
    blade = Blade(pk=pk, name=f"Knife {pk}", state=state.value, fault=fault, kind=kind.value)
    on = Edge(pk, BladeKind.HOOF_KNIFE, None, True, True, None, end=end, cows=cows)
    return BladeEdge(blade, on, life, life, edge_outlook(life, cows, 0.1, is_dull=on.is_dull))


@pytest.mark.parametrize(
    ("given", "words"),
    [
        (edge(), "no cow yet, counted on for 10"),
        (edge(1), "1 cow, counted on for 9 more"),
        (edge(12), "12 cows: may drag at any cow now"),
        (edge(18), "18 cows: no edge here has cut more"),
        (edge(30, FIGURE), "30 cows: past what it is counted on for"),
        (edge(21, end=EdgeEnd.WENT_DULL), "dull after 21 cows"),
        (edge(9, end=EdgeEnd.BROKEN), "after 9 cows"),
        (edge(0, end=EdgeEnd.BROKEN), ""),
        (edge(300, FIGURE, kind=BladeKind.GRINDER_DISC), "300 cows"),
    ],
)
def test_the_edge_is_told_in_a_few_words(given, words):
    assert edge_words(given) == words


def test_the_doubt_is_told_or_that_there_is_too_little_to_tell():
    assert interval_words(edge()) == "8 of 10 such edges go dull after 10 to 18 more cows, half by 14."
    assert "your own figure, 25 cows" in interval_words(edge(0, FIGURE))
    assert interval_words(edge(9, end=EdgeEnd.WENT_DULL)) == ""


@pytest.mark.parametrize(
    ("given", "mark"),
    [
        (edge(), ("done", "Sharp")),
        (edge(state=BladeState.BOUGHT), ("done", "New, not used yet")),
        (edge(300, FIGURE, kind=BladeKind.GRINDER_DISC), ("done", "In use")),
        (edge(12), ("due", "Near its end")),
        (edge(9, end=EdgeEnd.WENT_DULL), ("due", "Dull")),
        (
            edge(state=BladeState.OUT_OF_USE, fault=BladeFault.CRACKED.value),
            ("urgent", "Out of use: cracked"),
        ),
        (edge(state=BladeState.OUT_OF_USE, fault=BladeFault.LOST.value), ("plain", "Out of use: lost")),
        (edge(state=BladeState.AT_GRINDING), ("plain", "At grinding")),
    ],
)
def test_the_mark_says_what_is_to_be_done(given, mark):
    assert state_mark(given) == mark


def van(edges, *cows):
    days = [DayOfCows(MONDAY + timedelta(days=n), each) for n, each in enumerate(cows)]
    blades = {each.blade.pk: each.blade for each in edges}
    plans = grinding_plan([each.now() for each in edges], days, 0.1)
    told = tuple(
        GrindingDay(plan, tuple(blades[pk] for pk in plan.grind), tuple(blades[pk] for pk in plan.carry), 3)
        for plan in plans
    )
    job = JobGrinding(BladeKind.HOOF_KNIFE, Hand.RIGHT, 1.0, False, tuple(edges), told)
    return VanGrinding(Van(pk=1, name="Van 1"), (job,))


def answer(edges, *cows, today=MONDAY):
    return van_answer(van(edges, *cows), edges, today)


def test_the_title_is_what_to_grind_before_which_day():
    dull = edge(20, end=EdgeEnd.WENT_DULL)
    assert answer([dull], 5) == "Grind “Knife 1” before today"
    assert answer([dull], 5, today=MONDAY - timedelta(days=1)) == "Grind “Knife 1” before tomorrow"
    assert answer([edge()], 5, 9) == "Grind “Knife 1” before tomorrow"
    three = [edge(20, end=EdgeEnd.WENT_DULL, pk=pk) for pk in (1, 2, 3)]
    assert answer(three, 30) == "Grind 3 blades before today"


def test_or_that_nothing_is_to_be_ground_or_that_they_are_too_few():
    assert answer([edge()], 5) == "Nothing to grind this week: carry 1 sharp knife"
    assert answer([edge()], 60) == "60 cows today are more than 1 sharp knife last: take 3"
    assert answer([edge(), edge(20, end=EdgeEnd.WENT_DULL, pk=2)]) == "1 edge of Van 1 cuts, 1 dull"


def test_a_chance_is_told_in_hundreds():
    assert [of_100(chance) for chance in (0, 0.001, 0.07, 0.999, 1)] == [
        "0",
        "under 1",
        "7",
        "over 99",
        "100",
    ]


@pytest.mark.parametrize(
    ("days", "name"), [(0, "today"), (1, "tomorrow"), (3, "Thursday"), (9, "Wed 11 Mar")]
)
def test_a_day_has_the_name_one_would_say(days, name):
    assert day_name(MONDAY + timedelta(days=days), MONDAY) == name


def test_an_edge_that_is_not_over_keeps_its_outlook():
    assert replace(edge(3)).counted_on == 10
