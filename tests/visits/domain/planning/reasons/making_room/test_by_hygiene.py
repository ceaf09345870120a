from tests.visits.domain.planning.hand_made import board, job, monday, week, window
from visits.domain.planning.reasons.making_room.by_hygiene import hygiene_that_makes_room


def ways(problem, orders, out):
    return [r.figures for r in hygiene_that_makes_room(board(problem), orders, out)]


def test_the_worse_herd_before_it_is_named():
    first = job("a", "near", windows=[window("07:00", "08:30")])
    late = job("b", "far", windows=[window("09:00", "12:00")])
    (figures,) = ways(week(first, late, hygiene={"near": 2, "far": 1}), ((0,),), 1)
    named = ("other", "other_level", "level", "others", "behind", "start")
    assert [figures[key] for key in named] == ["a", 2, 1, 1, "a", monday("09:00")]


def test_the_cleaner_herd_after_it_is_named():
    early = job("b", "far", windows=[window("07:00", "09:00")])
    then = job("a", "near", windows=[window("10:00", "12:00")])
    (figures,) = ways(week(then, early, hygiene={"near": 0, "far": 1}), ((0,),), 1)
    assert [figures[key] for key in ("other", "behind", "others")] == ["a", None, 1]


def test_hygiene_is_no_way_where_time_is_short_as_well():
    first = job("a", "near", windows=[window("07:00", "08:30")])
    late = job("b", "far", windows=[window("07:00", "08:30")])
    assert ways(week(first, late, hygiene={"near": 2}), ((0,),), 1) == []


def in_the_way(last_ends):
    near = [job(name, "near", windows=[window("07:00", "12:00")]) for name in ("a", "b")]
    middle = job("c", "middle", windows=[window("07:00", last_ends)])
    wants = job("d", "far", windows=[window("10:10", "12:30")])
    (figures,) = ways(week(*near, middle, wants, hygiene={"near": 1, "middle": 2}), ((0, 1, 2),), 3)
    return figures["others"], figures["other"]


def test_the_place_with_the_fewest_herds_in_the_way_is_named():
    assert in_the_way("12:00") == (3, "c")
    assert in_the_way("13:00") == (2, "b")
