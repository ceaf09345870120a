"""Stored trims as the entries they were made of."""

from dataclasses import replace

import pytest
from hypothesis import given, settings

from tests.factories import blocked_foot, make_cow, put_down, trimmed_foot, under_way
from tests.visits.domain.cow_entries import COWS
from visits.domain.crush_entry import SIGNS, CowEntry, FindingEntry
from visits.domain.feet import Claw, Foot
from visits.domain.lesions import DDStage, LesionCode
from visits.domain.mobility import MobilityScale
from visits.domain.trim_refusals import refusals
from visits.selectors.trim_entries import entries_of

SORE = FindingEntry(LesionCode.DD, Claw.SKIN, zone=10, severity=3, dd_stage=DDStage.M2)
RICH = CowEntry(
    feet=(
        blocked_foot(wall_mm=75, wall_measured_from="coronet", toe_angle=48, look_again_days=9),
        trimmed_foot(Foot.RIGHT_FORE, findings=(SORE,), for_vet="odd lump", **dict.fromkeys(SIGNS, True)),
    ),
    mobility_scale=MobilityScale.SPRECHER,
    mobility_score=3,
    belly_band_minutes=4,
    crush_seconds=300,
    note="Quiet",
    for_vet="thin and dull",
)


@pytest.fixture
def visit(house):
    return under_way(house.farm, house.van)


def put(visit, cow, entry):
    words = {name: value for name, value in vars(entry).items() if name != "feet"}
    return put_down(visit, cow, *entry.feet, **words)


def test_every_word_comes_back(house, visit):
    trim = put(visit, house.cow, RICH)
    assert entries_of(house.scope, [trim]) == {trim.pk: RICH}


def test_any_entry_that_can_be_kept_comes_back(house, visit):
    @settings(max_examples=40)
    @given(COWS.filter(lambda entry: not refusals(entry)))
    def comes_back(entry):
        trim = put(visit, make_cow(house.farm, "7"), entry)
        assert entries_of(house.scope, [trim]) == {trim.pk: entry}

    comes_back()


def test_many_take_three_questions_and_none_takes_none(house, visit, django_assert_num_queries):
    trims = [put(visit, make_cow(house.farm, str(n)), replace(RICH, note=str(n))) for n in range(5)]
    with django_assert_num_queries(3):
        found = entries_of(house.scope, trims)
    assert [found[trim.pk].note for trim in trims] == list("01234")
    with django_assert_num_queries(0):
        assert entries_of(house.scope, []) == {}
