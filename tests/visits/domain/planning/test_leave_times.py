from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.leave_times import gone_too_late, home_free, leave_times

MEAL = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}


def minutes(problem, order):
    """Leaving times worth trying, in minutes after seven."""
    route = board(problem).route(0, order)
    return {(moment - route.shift.start) / 600 for moment in leave_times(route)}


def test_without_a_meal_each_edge_of_an_opening_gives_one_leaving_time_and_the_start_of_the_shift_one():
    assert minutes(week(job("a", windows=[window("09:00", "12:00")])), (0,)) == {0, 100, 220}


def test_a_leaving_time_outside_the_shift_is_not_tried():
    assert minutes(week(job("a", windows=[window("07:00", "08:30")])), (0,)) == {0, 10}


def test_a_meal_adds_leaving_fed_and_leaving_a_meal_earlier():
    found = minutes(week(job("a", windows=[window("09:00", "12:00")]), shifts=[shift(meal=MEAL)]), (0,))
    assert {100, 100 - 30, 220, 220 - 30, 300, 420} <= found


def test_a_meal_time_of_one_instant_still_counts_as_time_away():
    route = board(week(shifts=[shift(meal=MEAL | {"latest": MEAL["earliest"]})])).route(0, ())
    meal = route.shift.meal
    assert gone_too_late(meal) == meal.earliest + 1
    assert home_free(route, meal) == meal.earliest + meal.length
