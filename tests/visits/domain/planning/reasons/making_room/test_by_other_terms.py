from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.reasons.making_room.by_other_terms import terms_that_make_room

TWO = [shift(), shift(id="ben", crew="ben", cost_fixed=7)]


def ways(problem, orders, out):
    return {r.code: r.figures for r in terms_that_make_room(board(problem), orders, out)}


def test_other_hours_are_the_cheapest_of_the_week():
    full, wants = job("a"), job("b", windows=[window("20:00", "21:00")])
    said = ways(week(full, wants), ((0,),), 1)
    assert said.keys() == {"other-hours"}
    assert said["other-hours"]["money"] == 60 * 40
    assert said["other-hours"]["shift"] == "mon"


def test_another_crew_is_named_where_one_could():
    block = job("a", minutes=500)
    wants = job("b", crews=["ann"], minutes=500)
    said = ways(week(block, wants, shifts=TWO), ((0,), ()), 1)
    assert said["any-crew"]["shift"] == "ben"
    assert "other-hours" not in said


def test_a_promise_is_loosened_to_its_open_hours():
    kept = job("a", fixed={"shift": "mon", "start": monday("09:00")})
    clash = job("b", fixed={"shift": "mon", "start": monday("09:30")})
    said = ways(week(kept, clash), ((0,),), 1)
    assert said.keys() == {"no-promise"}
    assert said["no-promise"]["money"] == 60 * 40
