from datetime import UTC, datetime, timedelta
from itertools import permutations

import pytest

from visits.domain.kit.blade_kinds import BladeFault, BladeState, TurnPart
from visits.domain.kit.blade_life import BladeWord, blade_standing

START = datetime(2026, 3, 2, 8, tzinfo=UTC)
CHIPPED, CRACKED, LOST = BladeFault.CHIPPED, BladeFault.CRACKED, BladeFault.LOST
SHARPENED = None


def at(hour):
    return START + timedelta(hours=hour)


def standing(*words):
    """Where it stands after (what is said, fault) an hour apart, in whatever order they are heard."""
    told = [BladeWord(at(n), *(word if isinstance(word, tuple) else (word,))) for n, word in enumerate(words)]
    found = {blade_standing(order, at(-1)) for order in permutations(told)}
    assert len(found) == 1
    return found.pop()


@pytest.mark.parametrize(
    ("words", "state", "fault", "since"),
    [
        ((), BladeState.BOUGHT, None, -1),
        ((TurnPart.IN_HAND, TurnPart.IN_HAND), BladeState.IN_USE, None, 0),
        ((TurnPart.WENT_DULL,), BladeState.BOUGHT, None, -1),
        ((BladeState.IN_USE, BladeState.AT_GRINDING), BladeState.AT_GRINDING, None, 1),
        ((BladeState.AT_GRINDING, SHARPENED), BladeState.IN_USE, None, 1),
        ((BladeState.AT_GRINDING, TurnPart.IN_HAND), BladeState.IN_USE, None, 1),
        ((BladeState.IN_USE, (BladeState.RETIRED, LOST), TurnPart.IN_HAND), BladeState.RETIRED, LOST, 1),
        (((BladeState.RETIRED, LOST), BladeState.IN_USE), BladeState.IN_USE, None, 1),
        ((TurnPart.IN_HAND, TurnPart.CHIPPED), BladeState.OUT_OF_USE, CHIPPED, 1),
        ((BladeState.RETIRED, TurnPart.CHIPPED), BladeState.RETIRED, None, 0),
    ],
)
def test_what_was_said_last_holds(words, state, fault, since):
    found = standing(*words)
    assert (found.state, found.fault, found.since) == (state, fault, at(since))


@pytest.mark.parametrize(
    "word", [TurnPart.IN_HAND, SHARPENED, BladeState.IN_USE, (BladeState.IN_USE, CRACKED)]
)
def test_a_chipped_blade_comes_back_only_by_a_word_on_the_chip(word):
    out = standing(TurnPart.CHIPPED, word)
    assert (out.state, out.fault, out.since) == (BladeState.OUT_OF_USE, CHIPPED, at(0))
    assert standing(TurnPart.CHIPPED, word, (BladeState.IN_USE, CHIPPED)).state is BladeState.IN_USE


def test_each_fault_wants_a_word_of_its_own():
    words = [TurnPart.CHIPPED, TurnPart.CRACKED, (BladeState.IN_USE, CHIPPED)]
    assert standing(*words).fault is CRACKED
    assert standing(*words, (BladeState.IN_USE, CRACKED)).state is BladeState.IN_USE


def test_a_chip_that_is_heard_of_late_holds_over_a_plain_in_use_said_after_it():
    assert (
        standing(TurnPart.CHIPPED, BladeState.AT_GRINDING, BladeState.IN_USE).state is BladeState.OUT_OF_USE
    )


def test_of_two_words_of_one_moment_the_careful_one_holds():
    words = [BladeWord(at(0), TurnPart.CRACKED), BladeWord(at(0), BladeState.IN_USE, CRACKED)]
    for order in permutations(words):
        assert blade_standing(order, at(-1)).state is BladeState.OUT_OF_USE


def test_what_is_no_danger_goes_with_the_next_word():
    assert standing((BladeState.OUT_OF_USE, LOST), BladeState.IN_USE).state is BladeState.IN_USE
