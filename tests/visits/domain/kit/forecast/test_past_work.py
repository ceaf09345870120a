import pytest

from tests.visits.domain.kit.forecast.made_models import RECHECK, ROUTINE, URGENT, made
from visits.domain.kit.forecast.past_work import HALF_LIFE, Usual, past_work


def test_the_newest_day_counts_whole_and_half_of_it_a_half_life_before():
    work = past_work([made(0, days=-7), made(0, days=-7 - int(HALF_LIFE)), made(0, days=-7)])
    assert work.weight.tolist() == pytest.approx([1, 0.5, 1])


def test_visits_are_told_column_by_column():
    work = past_work(
        [made(0, routine=9, corrective=2, farm=3), made(0, routine=0, corrective=4, reason=URGENT)]
    )
    assert work.farm.tolist() == [3, 1]
    assert (work.routine.tolist(), work.lame.tolist()) == ([9, 0], [2, 4])
    assert work.is_urgent.tolist() == [False, True]


def test_a_usual_visit_is_the_middle_one_for_its_reason():
    work = past_work(
        [made(0, routine=heads) for heads in (20, 30, 31)]
        + [made(0, routine=0, corrective=3, reason=RECHECK)]
    )
    assert work.usual == {ROUTINE: Usual(30, 0), RECHECK: Usual(3, 3)}


def test_heads_are_learned_from_what_was_booked_those_put_off_left_out():
    seen = [made(0, routine=30, booked=(30, 0), days=-7 * n) for n in range(1, 20)]
    off = made(0, routine=0, booked=(30, 0), days=-8, is_made=False)
    made_up_for, lost = (
        past_work([*seen, off]),
        past_work([*seen, made(0, routine=0, booked=(30, 0), days=-1, is_made=False)]),
    )
    assert made_up_for.heads.called_off == pytest.approx(past_work(seen).heads.called_off, rel=0.01)
    assert lost.heads.called_off > 1.5 * made_up_for.heads.called_off


def test_a_visit_of_which_no_cow_was_noted_says_nothing_of_heads():
    seen = [made(0, routine=30, booked=(30, 0), days=-7)]
    assert past_work([*seen, made(0, routine=0, booked=(30, 0), days=-8)]).heads == past_work(seen).heads


def test_the_last_visits_keep_what_all_say():
    work = past_work([made(0, farm=n, days=-9 + n) for n in range(5)])
    last = work.of_last(2)
    assert last.farm.tolist() == [3, 4]
    assert (last.calls, last.weekdays) == (work.calls, work.weekdays)
    assert work.of_last(0).farm.tolist() == []
    with pytest.raises(ValueError, match="not so many"):
        work.of_last(6)


def test_without_visits_nothing_is_known_of_the_work():
    work = past_work([])
    assert (work.calls, work.weekdays, work.usual) == ({}, frozenset(), {})
