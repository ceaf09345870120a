from datetime import datetime

import pytest

from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from visits.domain.planning.measures import tick
from visits.domain.planning.reasons.standing import Standing, day_of, moment_of, standings, stop_of


def test_every_planned_job_has_its_place():
    made = board(week(job("a"), job("b", "middle"), job("c", "far")))
    found = [(each.job, each.shift, each.at, each.rest) for each in standings(made, ((2, 0),))]
    assert found == [(2, 0, 0, (0,)), (0, 0, 1, (2,))]


def test_what_a_shift_saves_without_a_job_is_its_whole_cost_where_it_is_alone():
    made = board(week(job("a")))
    standing = Standing(made, ((0,),), 0, 0, 0)
    assert standing.saved == made.cost(0, (0,)) == 100 * 40 + 300
    assert (standing.elsewhere, standing.beside) == (None, None)


def test_the_others_keep_their_order_when_another_place_is_tried():
    made = board(week(job("a"), job("b", "middle"), shifts=[shift(), shift(id="ben", crew="ben")]))
    standing = Standing(made, ((0, 1), ()), 1, 0, 1)
    assert standing.beside.order == (1, 0)
    assert (standing.elsewhere.shift, standing.elsewhere.order) == (1, (1,))


def test_a_stop_is_told_in_the_zone_of_the_problem():
    made = board(week(job("a", windows=[window("09:00", "10:00")])) | {"timezone": "Pacific/Auckland"})
    stop = stop_of(made, 0, (0,), 0)
    assert stop.start == tick(datetime.fromisoformat(monday("09:00")))
    assert moment_of(made, stop.start) == "2026-03-02T22:00:00+13:00"
    assert day_of(made, stop.start) == "2026-03-02"


def test_a_stop_of_an_order_that_cannot_be_done_is_refused():
    made = board(week(job("a", windows=[window("07:00", "07:30")])))
    with pytest.raises(ValueError, match="cannot be done"):
        stop_of(made, 0, (0,), 0)
