"""What a writing says, by its kind."""

import json
from decimal import Decimal
from uuid import UUID

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.visits.domain.cow_entries import COWS, words
from visits.domain.crush_writing import WritingKind
from visits.domain.read_content import read_content
from visits.domain.trim_refusals import refusals
from visits.domain.writing_content import (
    BladeContent,
    CowContent,
    KitContent,
    NewCow,
    SignOffContent,
    WashContent,
    content_json,
)

COW, WASH, KIT, SIGN_OFF = WritingKind.COW, WritingKind.WASH, WritingKind.KIT, WritingKind.SIGN_OFF
BLADE = WritingKind.BLADE
UID = "0192f0c1-1111-7222-8333-444455556666"
NEW = {"uid": UID, "number": "900", "is_another": False}
WASHED = {"substance": "peracetic acid", "washed_at": "2026-03-02T09:30:00Z"}
TURNED = {"at": "2026-03-02T09:30:00Z"}
SORE = {
    "foot": "LH",
    "findings": [{"lesion": "SU", "claw": "lateral", "severity": 2}],
    "actions": [{"kind": "length"}, {"kind": "block", "claw": "lateral", "block_kind": "wood"}],
}


def read(kind, value, **named):
    faults = []
    content = read_content(kind, value, faults, **named)
    return content, [(fault.field, fault.reason) for fault in faults]


def fields(kind, value, **named):
    return [field for field, _ in read(kind, value, **named)[1]]


def test_a_known_cow_and_a_new_one():
    assert read(COW, {"cow": {"id": 412}})[0].cow == 412
    assert read(COW, {"cow": {"new": NEW}})[0].cow == NewCow(UUID(UID), "900", False)


@pytest.mark.parametrize(
    ("cow", "field"),
    [
        (None, "content.cow"),
        ({}, "content.cow"),
        ("412", "content.cow"),
        ({"id": 0}, "content.cow.id"),
        ({"id": 2**63}, "content.cow.id"),
        ({"id": "412"}, "content.cow.id"),
        ({"id": 412, "new": NEW}, "content.cow"),
        ({"new": {**NEW, "number": " "}}, "content.cow.new.number"),
        ({"new": {**NEW, "number": "x" * 21}}, "content.cow.new.number"),
        ({"new": {**NEW, "uid": "x"}}, "content.cow.new.uid"),
        ({"new": {**NEW, "name": "Daisy"}}, "content.cow.new.name"),
        ({"id": 412, "name": "Daisy"}, "content.cow.name"),
    ],
)
def test_which_cow_must_be_said_in_one_way(cow, field):
    assert field in fields(COW, {"cow": cow})


def test_a_block_on_the_sore_claw_is_refused_at_its_claw_with_the_reason():
    """T8: common practice, no source."""
    ((field, reason),) = read(COW, {"cow": {"id": 1}, "entry": {"feet": [SORE]}})[1]
    assert field == "content.entry.feet[0].actions[1].claw"
    assert reason.startswith("Left hind: The block is on the sore outer claw.")


def test_what_is_taken_back_is_not_asked_whether_it_could_stand():
    assert fields(COW, {"cow": {"id": 1}, "entry": {"feet": [SORE]}}, is_gone=True) == []
    assert fields(COW, {"cow": {"id": 1}}, is_gone=True) == []
    assert fields(WASH, {}, is_gone=True) == []
    assert fields(KIT, {"consumable": 7}, is_gone=True) == []
    assert fields(BLADE, {}, is_gone=True) == []


@pytest.mark.parametrize(
    ("kind", "value", "expected"),
    [
        (WASH, {}, {"content.substance", "content.washed_at"}),
        (WASH, {**WASHED, "substance": "x" * 81}, {"content.substance"}),
        (WASH, {**WASHED, "dilution": "x" * 41}, {"content.dilution"}),
        (WASH, {**WASHED, "contact_minutes": 5}, {"content.contact_minutes"}),
        (WASH, {**WASHED, "contact_minutes": "-1"}, {"content.contact_minutes"}),
        (WASH, {**WASHED, "colour": "red"}, {"content.colour"}),
        (WASH, {**WASHED, "consumable": 7, "litres": "7.5"}, set()),
        (WASH, {**WASHED, "consumable": None, "litres": None}, set()),
        (WASH, {**WASHED, "consumable": "7", "litres": 10}, {"content.consumable", "content.litres"}),
        (WASH, {**WASHED, "consumable": 0, "litres": "0"}, {"content.consumable", "content.litres"}),
        (WASH, {**WASHED, "litres": "7.55"}, {"content.litres"}),
        (WASH, {**WASHED, "litres": "10000"}, {"content.litres"}),
        (KIT, {}, {"content.consumable", "content.extra"}),
        (KIT, {"consumable": 7, "extra": "1.234"}, {"content.extra"}),
        (KIT, {"consumable": 0, "extra": "1"}, {"content.consumable"}),
        (BLADE, {}, {"content.at"}),
        (BLADE, {**TURNED, "in_hand": 7}, {"content.in_hand"}),
        (
            BLADE,
            {**TURNED, "in_hand": [7, "8", True, 0, 2**63]},
            {f"content.in_hand[{n}]" for n in (1, 2, 3, 4)},
        ),
        (BLADE, {**TURNED, "went_dull": [7, 8, 7]}, {"content.went_dull[2]"}),
        (BLADE, {**TURNED, "in_hand": list(range(1, 22))}, {"content.in_hand"}),
        (BLADE, {**TURNED, "in_hand": [8, 7], "cracked": [7]}, {"content.in_hand[1]"}),
        (BLADE, {**TURNED, "in_hand": [7], "chipped": [7]}, {"content.in_hand[0]"}),
        (BLADE, {**TURNED, "in_hand": [7], "went_dull": [7]}, set()),
        (BLADE, {**TURNED, "bent": [7]}, {"content.bent"}),
        (SIGN_OFF, {"received_by": "x" * 121}, {"content.received_by"}),
        (SIGN_OFF, {"was_done": "x" * 4001}, {"content.was_done"}),
        (SIGN_OFF, {"washed_down": "yes"}, {"content.washed_down"}),
        (COW, [], {"content", "content.cow"}),
    ],
)
def test_each_fault_is_told_by_its_field(kind, value, expected):
    assert set(fields(kind, value)) == expected


KEYS = st.lists(st.integers(1, 99), max_size=4, unique=True).map(tuple)
CONTENTS = st.one_of(
    st.tuples(
        st.just(COW),
        st.builds(
            CowContent,
            cow=st.integers(1, 2**63 - 1) | st.builds(NewCow, st.uuids(), st.just("900"), st.booleans()),
            entry=COWS.filter(lambda entry: not refusals(entry)),
            told_vet=words(120),
        ),
    ),
    st.tuples(
        st.just(WASH),
        st.builds(
            WashContent,
            substance=words(80).filter(str.strip),
            dilution=words(40),
            contact_minutes=st.decimals(0, Decimal("9999.9"), places=1),
            washed_at=st.datetimes(timezones=st.timezones()).filter(lambda at: 1971 < at.year < 2999),
            consumable=st.none() | st.integers(1, 2**63 - 1),
            litres=st.none() | st.decimals("0.1", "9999.9", places=1),
        ),
    ),
    st.tuples(
        st.just(KIT), st.builds(KitContent, st.integers(1, 99), st.decimals(-99_999, 99_999, places=2))
    ),
    st.tuples(
        st.just(BLADE),
        st.builds(
            BladeContent,
            in_hand=KEYS,
            went_dull=KEYS,
            cracked=KEYS.map(lambda keys: tuple(key + 99 for key in keys)),
            chipped=st.just(()) | st.just((2**63 - 1,)),
            at=st.datetimes(timezones=st.timezones()).filter(lambda at: 1971 < at.year < 2999),
        ),
    ),
    st.tuples(
        st.just(SIGN_OFF),
        st.builds(SignOffContent, words(120), words(400), words(400), st.booleans(), words(200)),
    ),
)


@given(CONTENTS)
def test_what_is_kept_is_read_back_exactly(drawn):
    kind, content = drawn
    assert read(kind, json.loads(json.dumps(content_json(content)))) == (content, [])
