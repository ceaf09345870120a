"""Whom a stop must come after and before, and what that costs, by brute force."""

from hypothesis import given

from tests.visits.domain.planning.hand_made import job, week, window
from tests.visits.domain.planning.reasons.weeks_in_hand import MANY, InHand, changed, cost, inserted
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.reasons.hygiene_order import hygiene_order
from visits.domain.planning.reasons.standing import standings


@MANY
@given(small_weeks(most_jobs=4, least_jobs=2))
def test_neighbours_and_price_are_those_of_trying_every_place_without_the_rule(problem):
    in_hand = InHand(problem)
    levels = {site["id"]: site["hygiene"] for site in problem["sites"]}
    level = [levels[each["site"]] for each in problem["jobs"]]
    free = changed(problem, sites=[site | {"hygiene": 0} for site in problem["sites"]])
    for standing in standings(in_hand.board, in_hand.week):
        order, at = standing.order, standing.at
        cleaner = [each for each in order[:at] if level[each] < level[standing.job]]
        worse = [each for each in order[at + 1 :] if level[each] > level[standing.job]]
        said = [reason.figures for reason in hygiene_order(standing)]
        assert bool(said) == bool(cleaner or worse)
        for figures in said:
            assert figures.get("after") == (in_hand.names[cleaner[-1]] if cleaner else None)
            assert figures.get("before") == (in_hand.names[worse[0]] if worse else None)
            best = min(cost(free, standing.shift, each) for each in inserted(standing.rest, standing.job))
            assert abs(figures["money"] - (cost(free, standing.shift, order) - best)) < 0.02


def test_the_price_of_the_order_is_that_of_this_stop_moved_alone():
    early = job("b", "near", windows=[window("07:00", "08:30")])
    in_hand = InHand(
        week(job("a", "far", windows=[window("07:00", "12:00")]), early, hygiene={"near": 0, "far": 1})
    )
    after = standings(in_hand.board, in_hand.week)[1]
    (reason,) = hygiene_order(after)
    assert reason.figures == {"level": 1, "money": 0.0, "after": "b", "after_level": 0}


def test_the_same_level_is_no_reason():
    in_hand = InHand(week(job("a", "far"), job("b"), hygiene={"near": 2, "far": 2}))
    assert [list(hygiene_order(each)) for each in standings(in_hand.board, in_hand.week)] == [[], []]
