from datetime import UTC, datetime, timedelta

import pytest

from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState, EdgeBefore, Hand, SharpenMethod
from visits.domain.kit.blade_life import BladeWord
from visits.domain.kit.edge_lives import BladeLog, EdgeEnd, Sharpened, edges_of
from visits.domain.kit.edge_log import CowCut, Turn

START = datetime(2026, 3, 2, tzinfo=UTC)
RED = 1
BELT = SharpenMethod.BELT
COWS = [CowCut(1, 7, START + timedelta(days=day, hours=9)) for day in range(10)]
"""One each morning at nine, days 0 to 9."""


def evening(day):
    return START + timedelta(days=day, hours=19)


def ground(day, before=EdgeBefore.DULL, by_hand=None, method=BELT):
    return Sharpened(evening(day), method, before, by_hand)


def dull(day, hours=12):
    return Turn(1, 7, START + timedelta(days=day, hours=hours), went_dull=frozenset({RED}))


def said(day, state, fault=None):
    return BladeWord(evening(day), state, fault)


def told(cows=COWS, **log):
    """(cows, end) of each edge."""
    words = {"known_since": START, **{key: tuple(value) for key, value in log.items() if key != "was_used"}}
    blade = BladeLog(RED, BladeKind.HOOF_KNIFE, Hand.RIGHT, was_used=log.get("was_used", False), **words)
    return edges_of(blade, cows)


def lives(**log):
    return [(edge.cows, edge.end) for edge in told(**log)]


def test_an_edge_runs_from_one_sharpening_to_the_next():
    edges = told(sharpened=[ground(2), ground(6, EdgeBefore.STILL_CUT)])
    assert [(edge.cows, edge.end, edge.method, edge.is_new) for edge in edges] == [
        (3, EdgeEnd.WENT_DULL, None, True),
        (4, EdgeEnd.STILL_CUT, BELT, False),
        (3, EdgeEnd.IN_USE, BELT, False),
    ]
    assert [edge.is_dull for edge in edges] == [True, False, False]


@pytest.mark.parametrize(
    ("before", "end"),
    [
        (EdgeBefore.DULL, EdgeEnd.WENT_DULL),
        (EdgeBefore.STILL_CUT, EdgeEnd.STILL_CUT),
        (EdgeBefore.CHIPPED, EdgeEnd.BROKEN),
        (EdgeBefore.NOT_SAID, EdgeEnd.NOT_SAID),
    ],
)
def test_only_dull_is_the_event_of_the_curve(before, end):
    first = told(sharpened=[ground(2, before)])[0]
    assert (first.end, first.is_dull) == (end, before is EdgeBefore.DULL)


def test_cows_after_it_was_said_dull_are_not_its_own():
    assert lives(turns=[dull(1)], sharpened=[ground(5, EdgeBefore.STILL_CUT)]) == [
        (2, EdgeEnd.WENT_DULL),
        (4, EdgeEnd.IN_USE),
    ]


def test_what_was_counted_by_hand_goes_before_the_log():
    edges = told(turns=[dull(1)], sharpened=[ground(5, by_hand=17)])
    assert (edges[0].cows, edges[0].by_hand, edges[1].by_hand) == (17, True, False)


def test_a_late_cow_only_changes_the_count():
    late = sorted([*COWS, CowCut(2, 7, START + timedelta(days=1, hours=10))], key=lambda cow: cow.at)
    assert [edge.cows for edge in told(cows=late, sharpened=[ground(2), ground(6)])] == [4, 4, 3]


def test_a_chip_ends_the_edge_until_the_blade_is_put_right():
    chip = Turn(1, 7, START + timedelta(days=2, hours=12), chipped=frozenset({RED}))
    back = said(5, BladeState.IN_USE, BladeFault.CHIPPED)
    assert lives(turns=[chip]) == [(3, EdgeEnd.BROKEN)]
    assert lives(turns=[chip], words=[back]) == [(3, EdgeEnd.BROKEN), (4, EdgeEnd.IN_USE)]
    # Ground and put right in one go: the sharpening begins the edge, and its method stays known.
    both = told(turns=[chip], words=[back], sharpened=[ground(5)])
    assert [(edge.cows, edge.method) for edge in both] == [(3, None), (4, BELT)]


def test_a_fault_said_by_a_person_ends_it_as_at_the_crush():
    out = said(2, BladeState.OUT_OF_USE, BladeFault.CRACKED)
    assert lives(words=[out]) == [(3, EdgeEnd.BROKEN)]


def test_a_retired_blade_counts_no_cow_after_its_day():
    assert lives(words=[said(3, BladeState.RETIRED)]) == [(4, EdgeEnd.TAKEN_OUT)]
    assert lives(words=[said(3, BladeState.RETIRED), said(5, BladeState.IN_USE)]) == [(8, EdgeEnd.IN_USE)]


def test_back_from_grinding_without_a_sharpening_noted_is_a_new_edge():
    words = [said(2, BladeState.AT_GRINDING), said(4, BladeState.IN_USE)]
    assert lives(words=words) == [(3, EdgeEnd.NOT_SAID), (5, EdgeEnd.IN_USE)]
    assert lives(words=words, sharpened=[ground(3)]) == [(3, EdgeEnd.WENT_DULL), (6, EdgeEnd.IN_USE)]


def test_at_grinding_it_cuts_nothing_and_stays_as_it_is():
    assert lives(words=[said(2, BladeState.AT_GRINDING)]) == [(3, EdgeEnd.IN_USE)]


def test_an_edge_whose_beginning_nobody_knows_tells_nothing():
    edges = told(was_used=True, sharpened=[ground(2)])
    assert [edge.tells for edge in edges] == [False, True]


def test_an_edge_that_was_never_in_hand_tells_nothing_unless_counted_by_hand():
    edges = told(cows=[], sharpened=[ground(2), ground(4, by_hand=0), ground(6, by_hand=12)])
    assert [edge.tells for edge in edges] == [False, True, True, False]


def test_a_new_one_in_its_place_begins_anew():
    edges = told(words=[said(2, BladeState.IN_USE, BladeFault.WORN)])
    assert [(edge.cows, edge.end, edge.is_new) for edge in edges] == [
        (3, EdgeEnd.TAKEN_OUT, True),
        (7, EdgeEnd.IN_USE, True),
    ]
