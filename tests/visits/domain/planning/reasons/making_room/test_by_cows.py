from tests.visits.domain.planning.hand_made import board, job, shift, week
from visits.domain.planning.reasons.making_room.by_cows import cows_that_make_room


def ways(problem, orders, out):
    return [r.figures for r in cows_that_make_room(board(problem), orders, out)]


def test_the_fewest_cows_over_all_shifts_are_named():
    days = [shift(max_cows=9), shift(id="ben", crew="ben", max_cows=11)]
    jobs = [job("a", cows=5), job("b", cows=5), job("c", cows=8)]
    (figures,) = ways(week(*jobs, shifts=days), ((0,), (1,)), 2)
    assert (figures["shift"], figures["cows"], figures["cows_limit"]) == ("ben", 2, 13)
    assert figures["money"] == 60 * 40


def test_cows_are_no_way_where_time_is_short_as_well():
    jobs = [job("a", cows=5), job("b", cows=5, minutes=600)]
    assert ways(week(*jobs, shifts=[shift(max_cows=9)]), ((0,),), 1) == []


def test_a_shift_without_a_limit_has_none_to_stretch():
    assert ways(week(job("a", cows=5), job("b", minutes=900)), ((0,),), 1) == []
