"""The hashes, held against their rule worked out by hand here, and each field against being left out of them."""

import hashlib
from dataclasses import fields, replace
from datetime import UTC, datetime

import pytest

from trimops.audit.domain.digests import (
    Content,
    Facts,
    changed_alone,
    content_digest,
    entry_digest,
    first_link,
    next_link,
)

CONTENT = Content('{"a":1}', '{"a":2}', "00ff", "192.0.2.7", "ab12")
FACTS = Facts(
    *(3, datetime(2026, 3, 2, 12, tzinfo=UTC), 4, "POST farm", "r-1", "changed"),
    *("farms.farm", 5, "", "", "c0"),
)


def sha(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()


def test_the_rule_is_the_one_that_is_written_down():
    assert content_digest(CONTENT) == sha(
        '{"after":"{\\"a\\":2}","before":"{\\"a\\":1}","salt":"00ff","seen_from":"192.0.2.7","session":"ab12"}'
    )
    assert entry_digest(FACTS) == sha(
        '{"at":"2026-03-02T12:00:00+00:00","beside":"","business":3,"by":4,"content":"c0","kind":"changed",'
        '"request":"r-1","row_id":5,"under":"","via":"POST farm","what":"farms.farm"}'
    )


@pytest.mark.parametrize("name", [field.name for field in fields(Facts)])
def test_no_fact_can_be_changed_without_the_hash_telling(name):
    other = {"at": datetime(2027, 1, 1, tzinfo=UTC)}.get(
        name, 99 if name in ("business", "by", "row_id") else "x"
    )
    assert entry_digest(replace(FACTS, **{name: other})) != entry_digest(FACTS)


@pytest.mark.parametrize("name", [field.name for field in fields(Content)])
def test_nothing_that_is_held_can_be_changed_without_the_hash_telling(name):
    assert content_digest(replace(CONTENT, **{name: "x"})) != content_digest(CONTENT)


def test_a_link_follows_from_all_before_it_and_no_business_from_another():
    one = next_link(first_link(3), "a")
    assert next_link(one, "b") == sha(one + "b")
    assert first_link(3) != first_link(4)


def test_only_what_differs_is_told():
    assert changed_alone({"a": 1, "b": 2}, {"a": 1, "b": 3, "c": 4}) == ({"b": 2}, {"b": 3, "c": 4})
