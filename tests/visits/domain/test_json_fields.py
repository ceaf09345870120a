"""JSON from outside, field by field."""

from datetime import UTC, datetime
from decimal import Decimal
from uuid import UUID

import pytest

from visits.domain.feet import Foot
from visits.domain.json_fields import JsonFields

UID = "0192f0c1-1111-7222-8333-444455556666"


def ask(value, question, *more, **named):
    """What is read of one field of that value, and what is wrong with it."""
    faults = []
    read = JsonFields({"it": value}, "", faults)
    found = getattr(read, question)("it", *more, **named)
    return found, [(fault.field, fault.reason) for fault in faults]


def reason(value, question, *more, **named):
    _, ((field, said),) = ask(value, question, *more, **named)
    assert field == "it"
    return said


def test_paths_grow_with_the_depth():
    faults = []
    read = JsonFields({"a": {"b": [1, {"c": "x"}]}}, "content", faults)
    ((_, _), (where, item)) = read.inner("a").items("b", 5)
    JsonFields(item, where, faults).whole("c", 0, 1)
    assert [fault.field for fault in faults] == ["content.a.b[1].c"]


def test_keys_that_nobody_asked_for_are_told_cut_short_and_made_sendable():
    faults = []
    read = JsonFields({"it": 1, "x" * 99: 1, "\ud800": 1}, "", faults)
    read.value("it")
    read.close()
    assert [(fault.field, fault.reason) for fault in faults] == [
        ("x" * 60, "unknown field"),
        ("?", "unknown field"),
    ]


@pytest.mark.parametrize(
    ("question", "more", "empty"),
    [
        ("text", (5,), ""),
        ("whole", (0, 5), None),
        ("flag", (), False),
        ("code", (Foot,), None),
        ("uid", (), None),
        ("instant", (), None),
        ("number", (Decimal(0), Decimal(5), 1), None),
        ("items", (5,), []),
    ],
)
def test_what_is_missing_is_empty_and_no_fault(question, more, empty):
    assert ask(None, question, *more) == (empty, [])


@pytest.mark.parametrize("value", [None, "", "   "])
def test_a_text_that_is_needed_must_say_something(value):
    assert reason(value, "text", 5, is_needed=True) == "is needed"


def test_text_keeps_line_breaks_and_every_letter():
    assert ask("a\nb\té 🐄", "text", 20) == ("a\nb\té 🐄", [])


def test_whole_numbers_know_their_ends():
    assert ask(5, "whole", 0, 5) == (5, [])
    assert reason(6, "whole", 0, 5) == "must be from 0 to 5"


@pytest.mark.parametrize("question", ["needed_uid", "needed_instant"])
@pytest.mark.parametrize("value", [None, "nonsense", 7])
def test_what_is_needed_is_told_once(question, value):
    assert len(ask(value, question)[1]) == 1


@pytest.mark.parametrize("value", [UID[:-1], UID.replace("-", ""), f"{{{UID[1:-1]}}}", "urn:uuid:" + UID])
def test_a_uuid_has_one_form(value):
    assert reason(value, "uid") == "must be a UUID"


def test_a_uuid_is_read_in_either_case():
    assert ask(UID.upper(), "uid")[0] == UUID(UID)


@pytest.mark.parametrize("value", ["2026-03-02T09:30:00Z", "2026-03-02T10:30:00.000+01:00"])
def test_a_moment_is_read_as_utc(value):
    assert ask(value, "instant")[0] == datetime(2026, 3, 2, 9, 30, tzinfo=UTC)


@pytest.mark.parametrize(
    "value", ["2026-03-02T09:30:00", "2026-03-02", "09:30", 1772443800, "0001-01-01T00:00:00+14:00"]
)
def test_a_moment_needs_its_offset_and_a_year_of_ours(value):
    assert reason(value, "instant").startswith("must")


def test_a_phone_whose_battery_was_dead_says_1970():
    assert ask("1970-01-01T00:00:05Z", "instant")[1] == []


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (2.5, "as text"),
        ("two", "as text"),
        ("NaN", "as text"),
        ("Infinity", "as text"),
        ("1" * 21, "as text"),
        ("5.1", "from 0 to 5"),
        ("-0.1", "from 0 to 5"),
        ("1e99", "from 0 to 5"),
        ("1.25", "more than 1 decimals"),
    ],
)
def test_a_number_is_text_with_a_point(value, words):
    assert words in reason(value, "number", Decimal(0), Decimal(5), 1)


def test_a_number_is_kept_exactly():
    assert ask("2.50", "number", Decimal(0), Decimal(5), 2)[0] == Decimal("2.50")
