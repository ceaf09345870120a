import json

import pytest

from tests.bench.planning.made_up_weeks import made_up_week
from tests.visits.domain.planning.hand_made import job, monday, planned, week
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.reasons.plan_mark import plan_mark
from visits.domain.planning.reasons.week_reasons import Clock, week_reasons


def test_every_stop_and_every_left_out_visit_has_its_reasons():
    kept = job("a", fixed={"shift": "mon", "start": monday("09:00")})
    problem = week(kept, job("b"), job("c", minutes=900))
    plan = planned(problem)
    said = week_reasons(json.dumps(problem), plan)
    assert said["complete"]
    assert said["of"] == plan_mark(plan)
    assert said["stops"].keys() == {"a", "b"}
    assert said["left_out"].keys() == {"c"}
    assert said["promises"].keys() == {"a"}
    assert [each["code"] for each in said["rules"]] == [
        "this-plan",
        "nearest-by-due-date",
        "same-area-same-day",
    ]
    assert said["rules"][0]["money"] == plan["cost"]["total"]


def test_what_there_was_no_time_for_is_absent_and_that_is_said():
    problem = week(job("a"), job("b"))
    said = week_reasons(json.dumps(problem), planned(problem), seconds=-1)
    assert (said["complete"], said["stops"], said["rules"]) == (False, {}, [])


def test_the_same_plan_has_the_same_reasons():
    problem = made_up_week(16, 1, 2)
    plan = planned(problem, iterations=20)
    first, second = (week_reasons(json.dumps(problem), plan, seconds=60) for _ in range(2))
    assert first == second


def test_a_piece_begun_is_finished_and_the_next_is_not_begun():
    clock = Clock(60)

    def pieces():
        yield 0, []
        clock.ends = 0
        yield 1, []
        yield 2, []

    assert [job for job, _ in clock.within(pieces())] == [0, 1]
    assert clock.ran_out


def test_a_malformed_problem_is_refused():
    with pytest.raises(ProblemFaults):
        week_reasons("{}", {"shifts": [], "left_out": []})
