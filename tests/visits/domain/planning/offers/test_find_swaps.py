"""Nothing fits: who would have to give way."""

from dataclasses import replace

from tests.visits.domain.planning.hand_made import job, monday, shift, week, window
from tests.visits.domain.planning.offers.standing import standing
from visits.domain.planning.offers.find_moves import find_moves
from visits.domain.planning.offers.find_offers import find_offers
from visits.domain.planning.offers.find_swaps import find_askings, find_put_offs, why_not

MORNING = [window("07:00", "08:40")]
PROMISE = {"shift": "mon", "start": monday("07:20")}
TWO = [shift(), shift(id="mon2", crew="ben")]


def full(**changes):
    """A morning that a job fills, and a new one that must have it."""
    return week(job("a", windows=MORNING, **changes), job("new", windows=MORNING, crews=["ann"]), shifts=TWO)


def freed(made, at=0):
    return {at: replace(made.board.problem.jobs[at], fixed=None)}


def test_a_job_that_may_wait_for_another_week_is_put_off_at_its_price():
    made, new = standing(
        week(job("a", windows=MORNING, leave_out_cost=500), job("new", windows=MORNING)), (0,)
    )
    assert (find_offers(made, new), find_moves(made, new)) == ([], [])
    (only,) = find_put_offs(made, new)
    assert (only.job, only.offer.place.order, only.offer.added.weight) == (0, (1,), 500)
    assert only.offer.added.money == 0


def test_a_job_that_must_be_planned_is_not_put_off():
    made, new = standing(week(job("a", windows=MORNING), job("new", windows=MORNING)), (0,))
    assert find_put_offs(made, new) == []


def test_a_promised_farm_is_asked_for_another_van():
    made, new = standing(full(fixed=PROMISE), (0,), ())
    assert (find_offers(made, new), find_moves(made, new), find_put_offs(made, new)) == ([], [], [])
    (only,) = find_askings(made, new, freed(made))
    assert (only.move.job, only.move.to.shift, only.offer.place.order) == (0, 1, (1,))
    assert only.offer.added.money == 100 * 40 + 30 * 10


def test_a_promised_farm_is_asked_for_a_later_hour_in_the_same_turn():
    promised = job("a", "near", fixed=PROMISE, windows=[window("07:00", "12:00")])
    made, new = standing(week(promised, job("new", windows=MORNING)), (0,))
    found = find_askings(made, new, freed(made))
    assert found[0].offer.place.order == (1, 0)
    assert (found[0].move.to.shift, found[0].move.to.at) == (0, 1)
    assert found[0].offer.added.money == 2400


def test_a_promise_that_stands_nowhere_is_passed_over():
    made, new = standing(full(fixed=PROMISE), (), ())
    assert find_askings(made, new, freed(made)) == []


def test_the_reason_is_said_in_a_sentence():
    made, new = standing(week(job("a"), job("new", windows=[window("07:00", "07:30")])), (0,))
    assert why_not(made, new) == "The job takes longer than any of its windows leaves within a shift."
