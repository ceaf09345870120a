from datetime import UTC, datetime, timedelta

import pytest

from visits.domain.kit.blade_away import Away, away_spans
from visits.domain.kit.blade_kinds import BladeState, TurnPart
from visits.domain.kit.blade_life import BladeWord

START = datetime(2026, 3, 2, tzinfo=UTC)
GRINDING, RETIRED, IN_USE = BladeState.AT_GRINDING, BladeState.RETIRED, BladeState.IN_USE


def at(day):
    return START + timedelta(days=day)


def spans(back=(), **words):
    """`d3=RETIRED`: said on day 3."""
    told = [BladeWord(at(int(day[1:])), state) for day, state in words.items()]
    return away_spans(reversed(told), [at(day) for day in back])


@pytest.mark.parametrize(
    ("words", "back", "expected"),
    [
        ({}, (), ()),
        ({"d1": IN_USE}, (), ()),
        ({"d1": RETIRED}, (2,), (Away(RETIRED, at(1)),)),
        ({"d1": RETIRED, "d4": IN_USE}, (2,), (Away(RETIRED, at(1), at(4)),)),
        ({"d1": GRINDING}, (), (Away(GRINDING, at(1)),)),
        ({"d1": GRINDING, "d4": IN_USE}, (), (Away(GRINDING, at(1), at(4)),)),
        ({"d1": GRINDING, "d4": IN_USE}, (0, 2, 3), (Away(GRINDING, at(1), at(2)),)),
        ({"d1": GRINDING, "d4": IN_USE}, (5,), (Away(GRINDING, at(1), at(4)),)),
        ({"d1": GRINDING, "d2": RETIRED}, (3,), (Away(GRINDING, at(1), at(2)), Away(RETIRED, at(2)))),
    ],
)
def test_it_was_away_from_the_word_to_the_one_that_brought_it_back(words, back, expected):
    assert spans(back, **words) == expected


def test_what_is_said_at_the_crush_begins_no_span():
    assert away_spans([BladeWord(at(1), TurnPart.CRACKED)], []) == ()


def test_the_moment_it_is_back_it_is_there():
    span = Away(GRINDING, at(1), at(2))
    assert [span.holds(at(day)) for day in (0, 1, 2)] == [False, True, False]
    assert Away(RETIRED, at(1)).holds(at(9))
