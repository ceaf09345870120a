import pytest

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.lay_out import lay_out

MEAL = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}


def laid(problem, order):
    made = board(problem)
    day = lay_out(made, 0, order, made.timing(0, order))
    zero = made.problem.shifts[0].start
    meal = day.meal and ((day.meal.start - zero) / 600, (day.meal.end - zero) / 600)
    return [tuple((t - zero) / 600 for t in (s.arrive, s.start, s.finish)) for s in day.stops], meal, day


def test_stops_follow_each_other_with_their_drives():
    stops, meal, day = laid(week(job("a", cows=2), job("b", "far", cows=3)), (0, 1))
    assert stops == [(20, 20, 80), (120, 120, 180)]
    assert [(s.travel, s.metres) for s in day.stops] == [(12_000, 15_000), (24_000, 30_000)]
    assert (meal, day.cows, day.metres) == (None, 5, 90_000)


@pytest.mark.parametrize(
    ("made", "meal"),
    [
        ([job("a", windows=[window("13:00", "14:00")])], (310, 340)),  # before leaving at 12:40
        ([job("a", windows=[window("10:40", "11:40")])], (300, 330)),  # after the return at 12:00
        ([job("a", minutes=500)], None),
        ([job("a", minutes=60)], None),
        ([job("a", windows=[window("15:00", "16:00")])], None),
    ],
)
def test_a_meal_is_printed_where_it_falls(made, meal):
    problem = week(*made, shifts=[shift(meal=MEAL)])
    if board(problem).timing(0, (0,)) is None:
        assert made[0]["minutes"] == 500
    else:
        assert laid(problem, (0,))[1] == meal


def test_a_meal_on_the_way_is_eaten_on_arrival_or_before_the_drive_when_that_would_be_too_late():
    long = job("a", minutes=260, windows=[window("07:20", "11:40")])
    second = job("b", "far", windows=[window("12:00", "16:00")], minutes=120)
    stops, meal, _ = laid(week(long, second, shifts=[shift(meal=MEAL)]), (0, 1))
    assert (meal, stops[1]) == ((320, 350), (320, 350, 470))
    soon = MEAL | {"latest": monday("12:00")}
    stops, meal, _ = laid(week(long, second, shifts=[shift(meal=soon)]), (0, 1))
    assert (meal, stops[1]) == ((280, 310), (350, 350, 470))
