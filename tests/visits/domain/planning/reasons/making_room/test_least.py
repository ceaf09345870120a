from tests.visits.domain.planning.hand_made import board, job, shift, week, window
from visits.domain.planning.reasons.making_room.least import least, places
from visits.domain.planning.reasons.making_room.limits import LIMITS

BY_CODE = {limit.code: limit for limit in LIMITS}


def test_every_place_of_every_shift_whose_crew_may_is_tried():
    made = board(week(job("a"), job("b", crews=["ann"]), shifts=[shift(), shift(id="ben", crew="ben")]))
    assert list(places(made.problem, ((0,), ()), 1)) == [(0, (1, 0)), (0, (0, 1))]
    assert len(list(places(made.problem, ((), ()), 0))) == 2


def test_of_two_places_that_need_the_same_the_cheaper_is_taken():
    days = [shift(max_work_minutes=90, cost_fixed=9), shift(id="ben", crew="ben", max_work_minutes=90)]
    found = least(board(week(job("a"), shifts=days)), ((), ()), 0, BY_CODE["work-limit"])
    assert (found.minutes, found.shift, found.extra) == (10, 1, 100 * 40 + 300)


def test_a_limit_that_is_not_there_gives_no_way():
    made = board(week(job("a", windows=[window("07:00", "07:30")])))
    assert least(made, ((),), 0, BY_CODE["work-limit"]) is None
    assert least(made, ((),), 0, BY_CODE["meal"]) is None
