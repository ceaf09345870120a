"""Places with one other job moved, against trying every job in every other place."""

import pytest
from hypothesis import HealthCheck, given, settings

from tests.random_examples import examples
from tests.visits.domain.planning.hand_made import job, monday, shift, week, window
from tests.visits.domain.planning.offers.standing import every_move, keep_least, standing, standing_weeks
from visits.domain.planning.offers.find_moves import find_moves
from visits.domain.planning.offers.find_offers import find_offers

TWO = [shift(), shift(id="mon2", crew="ben")]
MORNING = [window("07:00", "09:00")]


def test_a_job_that_blocks_the_hour_goes_to_the_other_van():
    problem = week(
        job("a", minutes=90, windows=MORNING), job("new", windows=MORNING, crews=["ann"]), shifts=TWO
    )
    made, new = standing(problem, (0,), ())
    assert find_offers(made, new) == []
    (only,) = find_moves(made, new)
    assert (only.move.job, only.move.away_from, only.move.to.shift) == (0, 0, 1)
    assert only.offer.place.order == (1,)
    assert only.offer.added.money == 60 * 40 + 40 * 40 + 30 * 10


def test_a_job_that_blocks_the_hour_takes_a_later_turn():
    problem = week(
        job("a", minutes=90, windows=[window("07:00", "09:00"), window("12:00", "14:00")]),
        job("b", windows=[window("09:30", "11:00")]),
        job("new", windows=MORNING),
    )
    made, new = standing(problem, (0, 1))
    (only,) = find_moves(made, new)
    assert (only.offer.place.order, only.move.job, only.move.to.at) == ((2, 1, 0), 0, 2)


def test_a_promise_is_never_moved():
    promise = {"shift": "mon", "start": monday("07:20")}
    problem = week(job("a", fixed=promise), job("new", windows=MORNING, crews=["ann"]), shifts=TWO)
    made, new = standing(problem, (0,), ())
    assert find_moves(made, new) == []


@settings(
    max_examples=examples(150), suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow]
)
@given(standing_weeks())
def test_the_moves_are_those_of_trying_everything(made):
    week_of, new = made
    best = {}
    for each in find_moves(week_of, new):
        stays = each.move.to.shift == each.offer.place.shift
        key = each.offer.place.shift, each.offer.place.order, None if stays else each.move.job
        keep_least(best, key, each.offer.added.weight)
    assert best == pytest.approx(every_move(week_of, new), abs=1e-6)


def test_the_moves_of_one_job_alone_can_be_asked_for():
    days = [shift(), shift(id="mon2", crew="ben")]
    made, new = standing(week(job("a"), job("b", "middle"), job("new"), shifts=days), (0, 1), ())
    assert {each.move.job for each in find_moves(made, new)} == {0, 1}
    assert {each.move.job for each in find_moves(made, new, only=1)} == {1}
