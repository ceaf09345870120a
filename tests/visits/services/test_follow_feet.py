"""Blocks and re-checks follow from the trims in the order in which the cow stood in the crush."""

from datetime import timedelta
from itertools import permutations
from uuid import uuid4

import pytest

from tests.factories import TUESDAY_TEN, blocked_foot, trimmed_foot, under_way
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import ActionEntry, CowEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.models import Block, Recheck, Trim
from visits.services.record_trim import CrushRecord, record_trim

OFF = FootEntry(Foot.LEFT_HIND, actions=(ActionEntry(ActionKind.BLOCK_OFF, Claw.MEDIAL),))
DAY = TUESDAY_TEN.date()
# Three visits to one cow: block on, block off and a new one on the other foot, looked at.
SAID = (
    (0, (blocked_foot(),)),
    (24, (OFF, blocked_foot(Foot.RIGHT_HIND))),
    (40, (trimmed_foot(Foot.RIGHT_HIND),)),
)


@pytest.fixture
def visits(house):
    """Three visits under way at once: the phones lay in the van and none has been sent."""
    return [under_way(house.farm, house.van, TUESDAY_TEN + timedelta(days=days)) for days, _ in SAID]


def put(house, visits, number, feet=None, minutes=20):
    at = visits[number].started_at + timedelta(minutes=minutes)
    record = CrushRecord(house.cow, CowEntry(feet=SAID[number][1] if feet is None else feet), uuid4(), at)
    return record_trim(visit=visits[number], record=record, by=house.trimmer)


def blocks(house):
    rows = Block.objects.within(house.scope).order_by("put_on", "foot")
    return [(row.foot, row.put_on - DAY, row.off_on and row.off_on - DAY) for row in rows]


def rechecks(house):
    rows = Recheck.objects.within(house.scope).order_by("due_from", "foot")
    return [
        (row.foot, (row.due_from - DAY).days, row.closed_on and (row.closed_on - DAY).days) for row in rows
    ]


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_whatever_visit_is_sent_first_the_outcome_is_as_if_sent_in_order(house, visits, order):
    for number in order:
        put(house, visits, number)
    assert blocks(house) == [
        ("LH", timedelta(0), timedelta(24)),
        ("RH", timedelta(24), None),
    ]
    assert rechecks(house) == [("LH", 21, 24), ("RH", 45, 40), ("RH", 45, None)]


def test_taking_a_block_away_afterwards_is_told_to_the_later_visits_too(house, visits):
    for number in range(3):
        put(house, visits, number)
    put(house, visits, 1, feet=(OFF,), minutes=30)
    assert blocks(house) == [("LH", timedelta(0), timedelta(24))]
    assert rechecks(house) == [("LH", 21, 24)]


def test_what_does_not_change_keeps_its_rows(house, visits):
    for number in range(3):
        put(house, visits, number)
    before = [list(model.objects.within(house.scope).order_by("pk").values()) for model in (Block, Recheck)]
    put(house, visits, 0, minutes=25)
    after = [list(model.objects.within(house.scope).order_by("pk").values()) for model in (Block, Recheck)]
    assert after == before


def test_the_words_of_the_other_visits_stay_as_they_were(house, visits):
    trims = [put(house, visits, number) for number in (2, 0)]
    late, early = Trim.objects.within(house.scope).order_by("pk")
    assert ([late.version, early.version], [late.pk, early.pk]) == ([1, 1], [trim.pk for trim in trims])
