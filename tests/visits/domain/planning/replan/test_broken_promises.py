"""Promises that cannot be kept are found, and no others."""

import pytest

from tests.visits.domain.planning.hand_made import job, monday, shift, week
from visits.domain.planning.replan.broken_promises import broken_promises, parts, without_promises


def promised(name, clock, site="near", **changes):
    return job(name, site, fixed={"shift": "mon", "start": monday(clock)}, **changes)


@pytest.mark.parametrize(
    ("jobs", "broken"),
    [
        ([promised("a", "09:00"), promised("b", "10:00")], []),
        ([promised("a", "09:00"), promised("b", "10:00", "middle")], ["b"]),
        ([promised("b", "10:00", "middle"), promised("a", "09:00")], ["b"]),
        ([promised("a", "07:10")], ["a"]),
        ([promised("a", "09:00"), promised("b", "09:30"), promised("c", "10:00")], ["b"]),
    ],
)
def test_of_promises_that_clash_the_later_is_broken(jobs, broken):
    assert broken_promises(week(*jobs)) == broken


def test_a_promise_whose_shift_is_gone_is_broken():
    problem = week(promised("a", "09:00"), shifts=[shift(id="tue")])
    assert broken_promises(problem) == ["a"]


def test_a_job_set_free_may_go_anywhere_but_must_be_planned():
    problem = week(promised("a", "09:00", leave_out_cost=5), promised("b", "12:00"))
    freed = without_promises(problem, ["a"])
    assert "fixed" not in freed["jobs"][0]
    assert "leave_out_cost" not in freed["jobs"][0]
    assert freed["jobs"][1] == problem["jobs"][1]


def test_what_is_no_list_has_no_parts():
    assert parts({"jobs": "none"}, "jobs") == []
