from tests.visits.domain.planning.hand_made import board, job, shift, week, window
from visits.domain.planning.insertion import by_regret, cheapest_spot, insert_all


def test_the_cheapest_spot_is_on_the_way():
    made = board(week(job("a", "near"), job("b", "middle"), job("c", "far")))
    spot = cheapest_spot(made, [(0, 2)], 1)
    assert spot.order == (0, 1, 2)
    assert spot.extra == 60 * 40


def test_no_spot_is_none():
    made = board(
        week(job("a", windows=[window("09:00", "10:00")]), job("b", windows=[window("09:00", "10:00")]))
    )
    assert cheapest_spot(made, [(0,)], 1) is None


def test_a_job_is_not_put_in_where_leaving_it_out_is_cheaper():
    made = board(week(job("a", "far", leave_out_cost=100)))
    assert insert_all(made, [()], [0]) == [()]


def test_regret_places_first_the_job_that_has_nowhere_else_to_go():
    days = [shift(), shift(id="m2", crew="ben", cost_fixed=5)]
    free = job("a", minutes=400)
    bound = job("b", minutes=400, crews=["ann"])
    assert by_regret(board(week(free, bound, shifts=days)), [(), ()], {0, 1}) == [(1,), (0,)]
