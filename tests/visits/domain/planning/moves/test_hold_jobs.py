"""A visit that stays where it is: the problem says so, and the planner keeps to it."""

from copy import deepcopy
from datetime import datetime

from tests.visits.domain.planning.hand_made import job, planned, shift, starts, week, window
from visits.domain.planning.moves.hold_jobs import Hold, hold_jobs

TUESDAY = shift(id="tue", start="2026-03-03T07:00:00+00:00", end="2026-03-03T17:30:00+00:00", crew="ben")
BOTH = [window(), {"start": "2026-03-03T07:00:00+00:00", "end": "2026-03-03T17:30:00+00:00"}]
TEN = datetime.fromisoformat("2026-03-03T10:00:00+00:00")


def held(hold, **changes):
    plain = {"windows": BOTH, "leave_out_cost": 1.0, **changes}
    problem = week(job("a", **plain), job("b", windows=BOTH), shifts=[shift(), TUESDAY])
    hold_jobs(problem["jobs"], problem["shifts"], {"a": hold})
    return problem


def test_a_visit_held_to_its_hour_is_planned_at_that_hour_whatever_it_costs():
    problem = held(Hold("tue", TEN))
    assert "leave_out_cost" not in problem["jobs"][0]
    assert starts(planned(problem))["a"] == ("tue", "10:00")


def test_a_visit_held_to_its_day_is_planned_on_that_day_with_that_van():
    problem = held(Hold("tue"))
    assert problem["jobs"][0]["windows"] == [BOTH[1]]
    assert problem["jobs"][0]["crews"] == ["ben"]
    assert starts(planned(problem))["a"][0] == "tue"


def test_the_others_are_as_they_were():
    assert held(Hold("tue"))["jobs"][1] == job("b", windows=BOTH)


def test_a_hold_for_a_van_that_does_not_go_out_is_void():
    before = {"windows": BOTH, "leave_out_cost": 1.0}
    assert held(Hold("wed", TEN))["jobs"][0] == job("a", **before)
    assert held(Hold("wed"))["jobs"][0] == job("a", **before)


def test_a_hold_for_a_day_on_which_the_farm_has_no_hours_is_void():
    assert held(Hold("tue"), windows=[window()])["jobs"][0]["windows"] == [window()]


def test_a_promise_made_before_is_not_loosened_by_a_hold_to_the_day():
    promise = {"shift": "tue", "start": TEN.isoformat()}
    problem = week(job("a", windows=BOTH, fixed=promise), shifts=[TUESDAY])
    before = deepcopy(problem["jobs"])
    hold_jobs(problem["jobs"], problem["shifts"], {"a": Hold("tue")})
    assert problem["jobs"] == before
