import pytest

from tests.visits.domain.planning.hand_made import board, job, shift, week, window
from visits.domain.planning.exact.dominance import beaten, keeps_cows, keeps_work, reach, settle
from visits.domain.planning.exact.label_store import EVERY, LOOSE, STRICT, bit, has, make, new_search
from visits.domain.planning.exact.shift_arrays import shift_arrays

HOUR = 36_000
RATE = 2400


def day_of(**changes):
    jobs = [job("a"), job("b", "middle"), job("c", "far", cows=50)]
    return shift_arrays(board(week(*jobs, shifts=[shift(max_cows=60, **changes)])), 0)


def judged(old, new, way=STRICT, day=None, fed=(1, 1)):
    """Whether a label at job 0 of (time, work, leave, cows, cost, seen) is beaten by an earlier settled one."""
    day, search = day or day_of(), new_search(3, 10, 10, 1, way)
    for (time, work, leave, cows, cost, seen), eaten in ((old, fed[0]), (new, fed[1])):
        make(search, 0, eaten, -1, time, work, leave, cows, cost, seen)
    settle(day, search, 0)
    return beaten(day, search, 1, reach(day, search, 1))


PLAIN = (2 * HOUR, HOUR, HOUR, 5, 100.0, bit(0))


def other(**changes):
    names = ("time", "work", "leave", "cows", "cost", "seen")
    return tuple(changes.get(name, value) for name, value in zip(names, PLAIN, strict=True))


@pytest.mark.parametrize("way", [STRICT, LOOSE, EVERY])
def test_an_equal_label_is_needless(way):
    assert judged(PLAIN, PLAIN, way)


@pytest.mark.parametrize(
    "better",
    [
        {"cows": 4},
        {"cost": 90.0},
        {"work": 0.5 * HOUR - 1, "cost": 100.0},
        {"leave": 2 * HOUR, "cost": 100.0},
    ],
)
def test_a_label_better_in_one_thing_stays(better):
    changes = {name: int(value) if name != "cost" else value for name, value in better.items()}
    assert not judged(PLAIN, other(**changes))


def test_time_that_is_paid_for_beats_where_no_limit_of_work_can_break():
    dearer = other(work=HOUR // 2, cost=100.0 + RATE / 2)
    assert judged(PLAIN, dearer)
    assert not judged(PLAIN, other(work=HOUR // 2, cost=100.0 + RATE / 2 - 1))


def test_it_does_not_where_the_limit_could_break():
    tight = day_of(max_work_minutes=300)
    assert not judged(PLAIN, other(work=HOUR // 2, cost=100.0 + RATE / 2), day=tight)
    assert judged(PLAIN, PLAIN, day=tight)


def test_jobs_done_count_in_the_strict_way_only():
    more = other(seen=bit(0) | bit(1))
    assert not judged(more, PLAIN, STRICT)
    assert judged(more, PLAIN, LOOSE)
    assert judged(PLAIN, more, STRICT)
    assert not judged(PLAIN, more, EVERY)


def test_a_job_that_cannot_follow_any_more_is_as_good_as_done():
    full = other(cows=20)
    assert judged(other(seen=bit(0) | bit(2)), full, STRICT)


def test_a_fed_crew_beats_a_hungry_one_and_not_the_other_way_round():
    assert judged(PLAIN, PLAIN, fed=(1, 0))
    assert not judged(PLAIN, PLAIN, fed=(0, 1))


def test_jobs_too_late_or_too_clean_or_with_too_many_cows_cannot_follow():
    jobs = [
        job("a", "middle"),
        job("b", windows=[window("07:00", "09:00")]),
        job("c", "far", cows=50),
        job("d", "near"),
    ]
    day = shift_arrays(board(week(*jobs, shifts=[shift(max_cows=60)], hygiene={"middle": 1, "far": 1})), 0)
    search = new_search(4, 10, 10, 1, STRICT)
    make(search, 0, 1, -1, 3 * HOUR, HOUR, HOUR, 20, 0.0, bit(0))
    assert [has(reach(day, search, 0), each) for each in range(4)] == [True, True, True, True]
    make(search, 0, 1, -1, 3 * HOUR, HOUR, HOUR, 10, 0.0, bit(0))
    assert not has(reach(day, search, 1), 2)


def test_a_day_that_must_end_within_the_limit_of_work_is_safe():
    search = new_search(3, 10, 10, 1, STRICT)
    make(search, 0, 1, -1, 2 * HOUR, HOUR, HOUR, 0, 0.0, bit(0))
    assert keeps_work(day_of(max_work_minutes=570), search, 0)
    assert not keeps_work(day_of(max_work_minutes=569), search, 0)


def test_too_little_time_for_too_many_cows_is_safe():
    """Fifty cows take an hour and the drive of twenty minutes to them: two hours left are 75 cows at most."""
    search = new_search(3, 10, 10, 1, STRICT)
    end = day_of().end
    make(search, 0, 1, -1, end - 2 * HOUR, HOUR, HOUR, 0, 0.0, bit(0))
    make(search, 0, 1, -1, end - HOUR, HOUR, HOUR, 22, 0.0, bit(0))
    make(search, 0, 1, -1, end - HOUR, HOUR, HOUR, 23, 0.0, bit(0))
    assert [keeps_cows(day_of(), search, label) for label in range(3)] == [False, True, False]
