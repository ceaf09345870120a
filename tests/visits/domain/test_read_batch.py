"""One sending of a phone."""

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from visits.domain.read_batch import MOST_WRITINGS, read_batch

UID = "0192f0c1-1111-7222-8333-444455556666"
AT = "2026-03-02T09:30:00Z"
ENVELOPE = {"phone": UID, "sent_at": AT}
WRITING = {"uid": UID, "kind": "cow", "record": UID, "made_at": AT, "content": {"cow": {"id": 1}}}


def envelope_faults(**changes):
    return [fault.field for fault in read_batch({**ENVELOPE, **changes})[1]]


def judged(**changes):
    batch, faults = read_batch({**ENVELOPE, "writings": [{**WRITING, **changes}]})
    assert faults == []
    (read,) = batch.writings
    return read


def test_an_empty_sending_only_asks_what_others_wrote():
    batch, faults = read_batch({**ENVELOPE, "seen": 7})
    assert (faults, batch.seen, batch.begun, batch.writings) == ([], 7, None, ())


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"phone": None}, "phone"),
        ({"phone": "mine"}, "phone"),
        ({"sent_at": "now"}, "sent_at"),
        ({"seen": -1}, "seen"),
        ({"seen": "7"}, "seen"),
        ({"begun": True}, "begun"),
        ({"begun": {"checked": True}}, "begun.at"),
        ({"begun": {"at": AT, "checked": "yes"}}, "begun.checked"),
        ({"writings": {}}, "writings"),
        ({"writings": [WRITING] * (MOST_WRITINGS + 1)}, "writings"),
        ({"extra": 1}, "extra"),
    ],
)
def test_an_envelope_that_is_wrong_is_told_by_its_field(changes, field):
    assert field in envelope_faults(**changes)


@pytest.mark.parametrize("value", [None, [], "batch", 7])
def test_what_is_no_object_is_no_batch(value):
    assert "" in [fault.field for fault in read_batch(value)[1]]


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"uid": None}, "uid"),
        ({"uid": 7}, "uid"),
        ({"kind": "song"}, "kind"),
        ({"kind": None}, "kind"),
        ({"record": "x"}, "record"),
        ({"after": "x"}, "after"),
        ({"made_at": None}, "made_at"),
        ({"not_before": "x"}, "not_before"),
        ({"is_gone": "no"}, "is_gone"),
        ({"colour": "red"}, "colour"),
        ({"content": None}, "content.cow"),
        ({"content": {"cow": {"id": 1}, "entry": {"note": 7}}}, "content.entry.note"),
    ],
)
def test_a_writing_that_is_wrong_is_no_fault_of_the_batch(changes, field):
    read = judged(**changes)
    assert (read.writing, [fault.field for fault in read.faults]) == (None, [field])


def test_a_bad_writing_is_answered_by_the_name_it_gave_itself():
    assert judged(kind="song").uid == UID
    assert judged(uid="nonsense").uid == ""
    assert judged().writing is not None


def test_a_thing_that_is_no_writing_at_all():
    batch, faults = read_batch({**ENVELOPE, "writings": ["hello", WRITING]})
    assert faults == []
    assert [read.writing is not None for read in batch.writings] == [False, True]


ANY_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=5),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner, max_size=3),
    max_leaves=8,
)


@given(st.dictionaries(st.sampled_from([*WRITING, "after", "is_gone", "not_before"]), ANY_JSON))
def test_no_writing_whatever_makes_it_stumble(changes):
    read = judged(**changes)
    json.dumps([fault.reason for fault in read.faults]).encode()
