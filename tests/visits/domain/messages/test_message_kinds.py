"""Kinds of messages."""

import pytest

from visits.domain.messages.message_kinds import WHAT_PLACES_HOLD, MessageKind
from visits.domain.messages.message_values import MessageFacts, message_values


@pytest.mark.parametrize("kind", MessageKind)
def test_each_kind_has_its_words_and_every_place_is_explained(kind):
    assert kind.label
    assert kind.when.endswith(".")
    assert set(kind.places) <= set(WHAT_PLACES_HOLD)
    assert len(kind.places) == len(set(kind.places))


def test_no_kind_both_tells_an_hour_and_takes_one_back():
    assert not [kind for kind in MessageKind if kind.tells_hour and kind.takes_back]


def test_every_place_has_a_value(london):
    facts = MessageFacts("Low Croft", "Ash & Rye", london)
    assert set(message_values(facts, "en", short=False)) == set(WHAT_PLACES_HOLD)
