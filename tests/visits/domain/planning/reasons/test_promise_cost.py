"""What a promise costs: never more than the true difference of the two best weeks, and a week that exists shows it."""

from copy import deepcopy

from hypothesis import given
from hypothesis import strategies as st

from tests.visits.domain.planning.brute_force import best_cost
from tests.visits.domain.planning.hand_made import board, job, monday, shift, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, InHand, cost
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.promise_cost import loosen, promise_costs


def promised(name, clock, day="mon", **changes):
    return job(name, fixed={"shift": day, "start": monday(clock)}, **changes)


def loosened(problem, at):
    made = deepcopy(problem)
    made["jobs"][at].pop("fixed")
    made["jobs"][at].pop("leave_out_cost", None)
    return made


def contract_cost(problem, orders):
    planned = {each for order in orders for each in order}
    out = [each for at, each in enumerate(problem["jobs"]) if at not in planned]
    return sum(cost(problem, at, order) for at, order in enumerate(orders)) + sum(
        each.get("leave_out_cost", 0) for each in out
    )


@MANY
@given(small_weeks(most_jobs=4, least_jobs=2), st.data())
def test_a_promise_costs_at_least_what_is_said(problem, data):
    first = problem["jobs"][0]
    day = data.draw(st.sampled_from(problem["shifts"]))
    first["fixed"] = {"shift": day["id"], "start": first["windows"][0]["start"]}
    in_hand = InHand(problem)
    for each, reason in promise_costs(in_hand.board, in_hand.week):
        free = loosened(problem, each)
        with_promise, without = best_cost(problem), best_cost(free)
        shown = loosen(
            in_hand.board,
            in_hand.week,
            each,
            next(at for at, order in enumerate(in_hand.week) if each in order),
        )
        saved = contract_cost(problem, in_hand.week) - contract_cost(free, shown.free)
        assert abs(reason.figures["money"] - saved) < 0.02
        # Where something must be missing, the two best weeks may miss different visits: no common measure.
        if with_promise[0] == without[0] == 0:
            assert -0.02 < reason.figures["money"] <= with_promise[2] - without[2] + 0.02


def said(problem, orders):
    return {at: reason.figures for at, reason in promise_costs(board(problem), orders)}


def test_a_promise_at_an_odd_hour_costs_the_wait_before_it():
    problem = week(job("a", windows=[window("07:00", "08:20")]), promised("b", "10:00"))
    figures = said(problem, ((0, 1),))[1]
    assert figures == {
        "promised": monday("10:00"),
        "money": 100 * 40,
        "shift": "mon",
        "start": monday("08:20"),
        "room_for": None,
    }


def test_a_promise_at_the_best_hour_costs_nothing_that_is_found():
    assert said(week(promised("a", "07:20")), ((0,),))[0]["money"] == 0


def test_a_promise_that_keeps_another_visit_out_says_so():
    wants = job("b", windows=[window("09:00", "10:00")], leave_out_cost=5000)
    figures = said(week(promised("a", "09:30"), wants), ((0,),))[0]
    assert (figures["room_for"], figures["money"]) == ("b", 5000 - 60 * 40)


def test_a_promise_whose_open_hours_leave_no_other_start_is_not_priced():
    only = promised("a", "09:00", windows=[window("09:00", "10:00")])
    assert said(week(only), ((0,),)) == {}
    assert said(week(only, shifts=[shift(), shift(id="ben", crew="ben")]), ((0,), ())).keys() == {0}


def test_what_the_week_could_save_anyway_is_not_laid_at_the_promise_s_door():
    """The plan in hand goes far, near, far: put right, it costs less with the promise kept as well."""
    problem = week(
        job("a", "far"),
        job("b", "near"),
        job("c", "far"),
        promised("d", "14:00", windows=[window("14:00", "15:01")]),
    )
    kept = loosen(board(problem), ((0, 1, 2, 3),), 3, 0).kept
    assert kept != ((0, 1, 2, 3),)
    assert said(problem, ((0, 1, 2, 3),))[3]["money"] <= 40
