import pytest

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.exact.shift_arrays import NO_LIMIT, shift_arrays
from visits.domain.planning.measures import PER_MINUTE

MEAL = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}


def arrays(*jobs, **changes):
    return shift_arrays(board(week(*jobs, shifts=[shift(**changes)])), 0)


def test_drives_and_roads_are_by_job_with_the_base_last():
    made = arrays(job("a", "far"), job("b", "near"))
    assert [[int(time) // PER_MINUTE for time in row] for row in made.drive] == [
        [0, 40, 60],
        [40, 0, 20],
        [60, 20, 0],
    ]
    assert made.road[0][2] == pytest.approx(45 * 10)


def test_openings_are_counted_from_the_start_of_the_shift():
    made = arrays(
        job("a", windows=[window("08:00", "09:00"), window("10:00", "12:00")]), job("b", crews=["ben"])
    )
    assert list(made.open_at) == [0, 2, 2]
    assert [int(each) // PER_MINUTE for each in made.open_first] == [60, 180]
    assert [int(each) // PER_MINUTE for each in made.open_last] == [60, 240]
    assert [int(each) for each in made.closes] == [240 * PER_MINUTE, -1]


def test_limits_that_are_not_given_limit_nothing():
    made = arrays(job("a"))
    assert (made.meal, made.fed_leave, made.most_cows) == (-1, 0, NO_LIMIT)
    assert made.most_work == made.end == 630 * PER_MINUTE


def test_who_leaves_after_a_meal_at_home_needs_none_on_the_way():
    made = arrays(job("a"), meal=MEAL, max_work_minutes=600, max_cows=60)
    assert made.fed_leave == 300 * PER_MINUTE
    assert (made.most_work, made.most_cows) == (600 * PER_MINUTE, 60)


def test_a_way_round_that_is_quicker_counts_as_the_soonest():
    slow = week(job("a", "far"), job("b", "near"))
    slow["travel"]["minutes"][0][3] = 200
    made = shift_arrays(board(slow), 0)
    assert int(made.drive[2][0]) == 200 * PER_MINUTE
    assert int(made.soonest[2][0]) == 60 * PER_MINUTE


def test_a_shift_without_jobs_has_a_base_only():
    assert arrays().drive.shape == (1, 1)


def test_the_pace_of_cows_counts_the_shortest_drive_to_them():
    made = arrays(job("a", "far", minutes=60, cows=20), job("b", "near", minutes=10, cows=90, crews=["ben"]))
    assert made.cow_pace == pytest.approx(20 / (100 * PER_MINUTE))
    assert arrays(job("a")).cow_pace == 0
