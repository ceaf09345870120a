"""The hidden causes of a visit's length, each turned on by itself."""

from dataclasses import replace
from random import Random
from statistics import mean

import pytest

from trimops.portal.demo.demo_files import farm_sketches, rates
from trimops.portal.demo.invent_length import TodayLuck, YardWays, cows_done_at, yard_ways
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import LesionCode

HIDDEN = replace(rates().hidden_length, kit_trouble=0.0)
USUAL = YardWays(wait=1.0, flow=1.0, helper=1.0, horn=1.0)
FAIR = TodayLuck(1.0, 1.0)
CUT = (ActionEntry(ActionKind.LENGTH), ActionEntry(ActionKind.BALANCE))
PLAIN = CowEntry((FootEntry(Foot.LEFT_HIND, actions=CUT), FootEntry(Foot.RIGHT_HIND, actions=CUT)))
ULCER = FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 3)
BLOCK = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.WOOD)
SORE = CowEntry((FootEntry(Foot.LEFT_HIND, findings=(ULCER,), actions=(*CUT, BLOCK)),))
SKETCH = farm_sketches()[1]


def lasted(ways=USUAL, today=FAIR, cow=PLAIN, count=10, hidden=HIDDEN, sketch=SKETCH):
    """The mean of many visits of `count` such cows."""
    drawn = [
        cows_done_at(Random(seed), hidden, (sketch, ways), today, [cow] * count)[1] for seed in range(150)
    ]
    return mean(drawn)


@pytest.mark.parametrize(
    "worse",
    [
        {"ways": replace(USUAL, wait=3.0)},
        {"ways": replace(USUAL, flow=2.0)},
        {"ways": replace(USUAL, helper=0.0)},
        {"ways": replace(USUAL, horn=1.3)},
        {"today": TodayLuck(1.2, 1.0)},
        {"today": TodayLuck(1.0, 1.2)},
        {"hidden": replace(HIDDEN, kit_trouble=1.0)},
        {"sketch": replace(SKETCH, water=False)},
        {"sketch": replace(SKETCH, hygiene=3)},
    ],
)
def test_each_cause_makes_a_visit_longer(worse):
    assert lasted(**worse) > lasted() + 5


def test_bad_weather_is_worse_in_an_open_yard():
    rain = TodayLuck(1.2, 1.0)
    under_roof, in_the_open = (
        lasted(today=rain, sketch=replace(SKETCH, shelter=s)) for s in ("roof", "open")
    )
    assert in_the_open > under_roof


def test_a_sore_foot_with_a_block_takes_longer_than_a_plain_one():
    one_foot = CowEntry((FootEntry(Foot.LEFT_HIND, actions=CUT),))
    assert lasted(cow=SORE) > lasted(cow=one_foot) + 10 * 4


def test_the_fortieth_cow_takes_longer_than_the_tenth():
    assert lasted(count=40) - lasted(count=39) > lasted(count=10) - lasted(count=9)


def test_cows_are_let_go_one_after_the_other_and_before_the_visit_is_over():
    let_go, over = cows_done_at(Random(1), HIDDEN, (SKETCH, USUAL), FAIR, [PLAIN] * 12)
    assert let_go == sorted(let_go)
    assert let_go[0] > 0
    assert let_go[-1] < over


def test_farms_differ_and_the_same_source_gives_the_same_farm():
    drawn = [yard_ways(Random(seed), HIDDEN, 1.0) for seed in range(40)]
    assert len({ways.flow for ways in drawn}) == 40
    assert mean(ways.helper for ways in drawn) == pytest.approx(HIDDEN.helper_there, abs=0.1)
    assert yard_ways(Random(3), HIDDEN, 1.0) == drawn[3]
