from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.engine_nodes import AFTER, BEFORE, MEAL, meal_nodes, visit_nodes

MEAL_TIME = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("14:00")}
TUESDAY = {"start": "2026-03-03T07:00:00+00:00", "end": "2026-03-03T17:30:00+00:00"}


def test_a_window_that_comes_back_every_day_is_one_point_open_in_both_shifts():
    days = [shift(), shift(id="tue", **TUESDAY)]
    both = [
        window("09:00", "12:00"),
        {"start": "2026-03-03T09:00:00+00:00", "end": "2026-03-03T12:00:00+00:00"},
    ]
    (node,) = visit_nodes(board(week(job("a", windows=both), shifts=days)))
    assert (node.first, node.last, node.late) == (9 * 36_000, 11 * 36_000, ((0, 0.0), (1, 0.0)))


def test_two_windows_of_a_day_are_two_points():
    made = board(week(job("a", windows=[window("09:00", "10:30"), window("14:00", "15:00")])))
    assert [(node.first / 36_000, node.last / 36_000) for node in visit_nodes(made)] == [(9, 9.5), (14, 14)]


def test_a_meal_has_a_point_before_one_after_and_one_at_each_open_place():
    made = board(week(job("a"), job("b", "far"), shifts=[shift(meal=MEAL_TIME)], hygiene={"far": 2}))
    meals = list(meal_nodes(made, 0, visit_nodes(made)))
    assert [(node.kind, node.place, node.level) for node in meals] == [
        (BEFORE, 0, 0),
        (AFTER, 0, 0),
        (MEAL, 1, 0),
        (MEAL, 3, 2),
    ]
    assert meals[0].first == 12 * 36_000


def test_a_shift_without_a_meal_has_none():
    made = board(week(job("a")))
    assert list(meal_nodes(made, 0, visit_nodes(made))) == []
