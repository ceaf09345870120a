"""One cow as a phone sends her: every fault is told with its field."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.crush_entry import CowEntry, FootEntry
from visits.domain.feet import Foot
from visits.domain.read_cow_entry import read_cow_entry


def read(value):
    faults = []
    entry = read_cow_entry(value, "content.entry", faults)
    return entry, [(fault.field.removeprefix("content.entry"), fault.reason) for fault in faults]


def with_foot(**fields):
    return {"feet": [{"foot": "LH", **fields}]}


def with_finding(**fields):
    return with_foot(findings=[{"lesion": "SU", "claw": "lateral", **fields}])


def with_action(**fields):
    return with_foot(actions=[{"kind": "length", **fields}])


def test_missing_keys_stand_for_their_empty_values():
    assert read({}) == (CowEntry(), [])
    assert read(with_foot()) == (CowEntry(feet=(FootEntry(Foot.LEFT_HIND),)), [])
    assert read({"note": None, "feet": None})[1] == []


@pytest.mark.parametrize(
    ("value", "field", "words"),
    [
        ("a cow", "", "must be an object"),
        ({"colour": "red"}, ".colour", "unknown field"),
        ({"note": 7}, ".note", "must be text"),
        ({"note": "x" * 301}, ".note", "longer than 300"),
        ({"note": "\x00"}, ".note", "no text"),
        ({"note": "\ud800"}, ".note", "no text"),
        ({"for_vet": "x" * 201}, ".for_vet", "longer than 200"),
        ({"mobility_scale": "UK"}, ".mobility_scale", "one of UK0-3, S1-5"),
        ({"mobility_scale": ["UK0-3"]}, ".mobility_scale", "one of"),
        ({"mobility_score": 10}, ".mobility_score", "from 0 to 9"),
        ({"mobility_score": 2.5}, ".mobility_score", "whole number"),
        ({"mobility_score": True}, ".mobility_score", "whole number"),
        ({"mobility_score": 10**40}, ".mobility_score", "from 0 to 9"),
        ({"belly_band_minutes": -1}, ".belly_band_minutes", "from 0 to 600"),
        ({"crush_seconds": 86_401}, ".crush_seconds", "from 0 to 86400"),
        ({"feet": {}}, ".feet", "must be a list"),
        ({"feet": [{}] * 9}, ".feet", "more than 8"),
        ({"feet": [{}]}, ".feet[0].foot", "is needed"),
        ({"feet": ["LH"]}, ".feet[0]", "must be an object"),
        (with_foot(foot="XX"), ".feet[0].foot", "one of LF, RF, LH, RH"),
        (with_foot(wall_mm=501), ".feet[0].wall_mm", "from 0 to 500"),
        (with_foot(toe_angle=181), ".feet[0].toe_angle", "from 0 to 180"),
        (with_foot(look_again_days=366), ".feet[0].look_again_days", "from 0 to 365"),
        (with_foot(has_pain="yes"), ".feet[0].has_pain", "true or false"),
        (with_foot(has_pain=1), ".feet[0].has_pain", "true or false"),
        (with_foot(smell=True), ".feet[0].smell", "unknown field"),
        (with_foot(findings=[{}] * 41), ".feet[0].findings", "more than 40"),
        (with_finding(lesion="ZZ"), ".feet[0].findings[0].lesion", "one of"),
        (with_finding(claw=""), ".feet[0].findings[0].claw", "is needed"),
        (with_finding(zone=13), ".feet[0].findings[0].zone", "from 0 to 12"),
        (with_finding(zone_map="V&G"), ".feet[0].findings[0].zone_map", "one of ILC"),
        (with_finding(severity=0), ".feet[0].findings[0].severity", "from 1 to 3"),
        (with_finding(dd_stage="M9"), ".feet[0].findings[0].dd_stage", "one of"),
        (with_action(kind="sing"), ".feet[0].actions[0].kind", "one of"),
        (with_action(claw="left"), ".feet[0].actions[0].claw", "one of"),
        (with_action(block_kind="steel"), ".feet[0].actions[0].block_kind", "one of"),
    ],
)
def test_each_fault_is_told_by_field_and_reason(value, field, words):
    ((found, reason),) = [fault for fault in read(value)[1] if fault[0] == field]
    assert found == field
    assert words in reason


def test_all_faults_are_told_at_once():
    value = {"note": 7, "feet": [{"foot": "LH", "wall_mm": "75"}, {"foot": "RH", "findings": [{"zone": 99}]}]}
    assert [field for field, _ in read(value)[1]] == [
        *(".feet[0].wall_mm", ".feet[1].findings[0].lesion", ".feet[1].findings[0].claw"),
        *(".feet[1].findings[0].zone", ".note"),
    ]


KEYS = st.sampled_from(["feet", "foot", "findings", "actions", "lesion", "zone", "note", "kind"])
ANY_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(KEYS | st.text(max_size=3), inner, max_size=4)
    ),
)


@given(ANY_JSON)
def test_nothing_whatever_makes_it_stumble_and_what_it_tells_can_be_sent(value):
    entry, faults = read(value)
    assert isinstance(entry, CowEntry)
    json.dumps(faults).encode()
