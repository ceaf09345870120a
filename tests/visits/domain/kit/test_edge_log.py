from datetime import UTC, datetime, timedelta
from itertools import permutations

from hypothesis import given, settings
from hypothesis import strategies as st

from visits.domain.kit.edge_log import CowCut, Turn, cows_by_blade, last_in_hand

START = datetime(2026, 3, 2, 8, tzinfo=UTC)
RED, BLUE = 1, 2


def at(minute):
    return START + timedelta(minutes=minute)


def cow(minute, visit=1, van=7):
    return CowCut(visit, van, at(minute))


def turn(minute, *blades, visit=1, van=7):
    return Turn(visit, van, at(minute), frozenset(blades))


def minutes(cows, turns):
    """Blade -> minutes of its cows, the same whatever came first."""
    found = {
        tuple(
            (blade, tuple((each.at - START) // timedelta(minutes=1) for each in of))
            for blade, of in sorted(cows_by_blade(cows, order).items())
        )
        for order in permutations(turns)
    }
    assert len(found) == 1
    return dict(found.pop())


def test_a_cow_is_of_the_blades_said_last_before_she_was_noted():
    cows = [cow(20), cow(5), cow(10), cow(30)]
    assert minutes(cows, [turn(0, RED), turn(10, BLUE), turn(25, RED, BLUE)]) == {
        RED: (5, 30),
        BLUE: (10, 20, 30),
    }


def test_a_turn_with_no_blade_means_none_in_hand():
    assert minutes([cow(5), cow(15)], [turn(0, RED), turn(10)]) == {RED: (5,)}


def test_before_the_first_word_of_a_visit_the_last_of_the_van_holds():
    cows = [cow(105, visit=2), cow(115, visit=2), cow(120, visit=3, van=8), cow(130, visit=4, van=None)]
    assert minutes(cows, [turn(0, RED), turn(50, BLUE), turn(110, RED, visit=2)]) == {
        BLUE: (105,),
        RED: (115,),
    }


def test_the_word_of_her_own_visit_goes_before_a_later_one_of_another():
    """An evening's word on the visit before must not reach into the one that had begun."""
    turns = [turn(0, RED), turn(100, RED, visit=2), turn(104, BLUE, visit=1)]
    assert minutes([cow(105, visit=2)], turns) == {RED: (105,)}


def test_nothing_was_in_hand_before_anything_was_said():
    assert minutes([cow(5)], [turn(6, RED)]) == {}


def test_what_is_in_hand_is_what_the_van_said_last():
    turns = [turn(0, RED), turn(10, BLUE), turn(20, RED, visit=2, van=8)]
    assert last_in_hand(turns, 7, at(60)) == {BLUE}
    assert last_in_hand(turns, 7, at(9)) == {RED}
    assert last_in_hand(turns, 9, at(60)) == frozenset()


_TIMES = st.integers(0, 40)
_VISITS = st.sampled_from([(1, 7), (2, 7), (3, 8), (4, None)])
_COWS = st.lists(st.builds(lambda t, v: cow(t, *v), _TIMES, _VISITS), max_size=8)
_TURNS = st.lists(
    st.builds(
        lambda t, v, b: turn(t, *b, visit=v[0], van=v[1]),
        _TIMES,
        _VISITS,
        st.sets(st.sampled_from([RED, BLUE])),
    ),
    max_size=6,
    unique_by=lambda each: each.at,
)


@settings(max_examples=40)
@given(_COWS, _TURNS)
def test_it_equals_looking_through_all_turns_for_each_cow(cows, turns):
    def in_hand(each):
        own = [t for t in turns if t.visit == each.visit and t.at <= each.at]
        others = [t for t in turns if each.van is not None and t.van == each.van and t.at <= each.at]
        return max(own or others, key=lambda t: t.at).in_hand if own or others else ()

    expected = {blade: sorted(each.at for each in cows if blade in in_hand(each)) for blade in (RED, BLUE)}
    found = cows_by_blade(cows, turns)
    assert {blade: [each.at for each in found.get(blade, [])] for blade in expected} == expected
