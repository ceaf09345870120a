from tests.visits.domain.planning.hand_made import job, monday, shift, week
from tests.visits.domain.planning.offers.standing import standing

PROMISE = {"shift": "mon", "start": monday("12:00")}


def test_a_round_is_worked_out_once():
    made, _ = standing(week(job("a"), job("new")), (0,))
    assert made.figures(0) is made.figures(0)
    assert made.without(0, 0).order == ()


def test_the_turns_of_a_day_are_those_in_which_one_unpromised_job_goes_elsewhere():
    made, _ = standing(week(job("a"), job("b"), job("c", fixed=PROMISE), job("new")), (0, 1, 2))
    assert made.movable(0) == [0, 1]
    assert set(made.shuffled(0)) == {(1, 0, 2), (1, 2, 0), (0, 2, 1)}


def test_a_turn_that_hygiene_forbids_is_no_turn():
    made, _ = standing(week(job("a"), job("b", "far"), job("new"), hygiene={"far": 2}), (0, 1))
    assert made.shuffled(0) == {}


def test_elsewhere_is_the_cheapest_place_in_another_shift():
    days = [shift(), shift(id="m2", crew="ben"), shift(id="m3", crew="cal", cost_fixed=50)]
    made, _ = standing(week(job("a"), job("new"), shifts=days), (0,), (), ())
    assert made.elsewhere(0, 0).place.shift == 1
    alone, _ = standing(week(job("a"), job("new")), (0,))
    assert alone.elsewhere(0, 0) is None


def test_a_day_that_breaks_a_rule_is_named():
    made, _ = standing(week(job("a", minutes=900), job("new"), shifts=[shift(), shift(id="m2")]), (0,), ())
    assert made.broken == [0]
