"""The rest of a day begun: each thing that is still to be decided, exactly."""

import json
from datetime import datetime

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.random_examples import examples
from tests.visits.domain.planning.hand_made import job, monday, planned, shift, starts, week, window
from tests.visits.domain.planning.small_weeks import small_weeks
from visits.domain.planning.audit import audit_week
from visits.domain.planning.board import Board
from visits.domain.planning.read_problem import read_problem
from visits.domain.planning.replan.broken_promises import broken_promises, without_promises
from visits.domain.planning.replan.day_so_far import SoFar, with_day_so_far


def at(clock):
    return datetime.fromisoformat(monday(clock))


def so_far(free="12:00", start="09:00", **changes):
    return SoFar("mon", "here", at(start), at(free), **changes)


def rest(*jobs, here="middle", levels=None, **so_far_changes):
    own = {key: so_far_changes.pop(key) for key in ("shifts",) if key in so_far_changes}
    problem = week(job("here", here, 180, cows=20), *jobs, hygiene=levels, **own)
    return with_day_so_far(problem, so_far(**so_far_changes))


def test_the_next_stop_is_reached_from_where_the_van_stands_and_not_before_it_is_free():
    assert starts(planned(rest(job("far", "far"))))["far"] == ("mon", "12:20")


def test_the_van_is_busy_until_it_is_free_whatever_the_visit_was_to_take():
    late = planned(rest(job("far", "far"), free="14:10"))
    assert starts(late) == {"here": ("mon", "09:00"), "far": ("mon", "14:30")}


def test_hours_already_worked_count_for_the_longest_day():
    # From the yard to middle are 40 minutes; really out since 07:20, an hour longer than the model's 08:20.
    limits = [shift(max_work_minutes=480)]
    fits = rest(job("far", "far", 140), left=at("07:20"), shifts=limits)
    over = rest(job("far", "far", 141, leave_out_cost=1), left=at("07:20"), shifts=limits)
    # Free at 12:00: 20 + 140 + 60 minutes to the yard make 15:40; since 07:20 that is 500 > 480; 13:20 home for 480.
    assert starts(planned(rest(job("far", "far", 120), left=at("07:20"), shifts=limits)))["far"]
    assert planned(over)["left_out"]
    assert starts(planned(rest(job("far", "far", 140), left=at("07:40"), shifts=limits)))["far"]
    assert fits["shifts"][0]["max_work_minutes"] == 420


def test_cows_done_before_count_for_the_most_of_the_day():
    limits = [shift(max_cows=60)]
    assert planned(rest(job("far", "far", cows=15), cows_before=25, shifts=limits))["left_out"] == []
    out = planned(rest(job("far", "far", cows=16, leave_out_cost=1), cows_before=25, shifts=limits))[
        "left_out"
    ]
    assert [each["job"] for each in out] == ["far"]


def test_no_cleaner_herd_comes_after_the_worst_of_the_day():
    levels = {"middle": 0, "far": 1, "near": 2}
    jobs = [job("far", "far", leave_out_cost=50_000), job("near", "near")]
    found = rest(*jobs, levels=levels, hygiene_before=2)
    plan = planned(found)
    assert set(starts(plan)) == {"here", "near"}
    assert found["jobs"][0]["site"] == "middle-today-mon"
    assert set(starts(planned(rest(*jobs, levels=levels)))) == {"here", "near", "far"}


def test_a_twin_site_is_as_far_from_everywhere_and_not_from_itself():
    found = rest(job("again", "middle"), levels={"middle": 0}, hygiene_before=0)
    assert "middle-today-mon" not in json.dumps(found)
    twin = rest(job("far", "far"), levels={"far": 3}, hygiene_before=1)
    travel = read_problem(json.dumps(twin)).travel
    assert travel.times[2] == travel.times[4]
    assert [row[2] for row in travel.times] == [row[4] for row in travel.times]


MEAL = {"minutes": 30, "earliest": monday("11:30"), "latest": monday("13:00")}


@pytest.mark.parametrize(
    ("free", "had", "meal"),
    [
        ("12:00", True, None),
        ("12:00", False, ("11:30", "13:00")),
        ("13:30", False, ("13:30", "14:30")),
        ("17:00", False, None),
    ],
)
def test_the_meal_is_still_due_unless_it_was_had_or_home_comes_first(free, had, meal):
    found = rest(free=free, meal_had=had, shifts=[shift(meal=MEAL)])["shifts"][0].get("meal")
    assert (found and (found["earliest"][11:16], found["latest"][11:16])) == meal


def test_going_home_is_always_possible():
    tight = [shift(end=monday("12:30"), max_work_minutes=60, max_cows=3, meal=MEAL)]
    found = rest(job("far", "far", 1, leave_out_cost=1), free="15:00", shifts=tight, cows_before=30)
    plan = planned(found)
    assert starts(plan) == {"here": ("mon", "09:00")}
    assert plan["shifts"][0]["return"] == monday("15:40")


def test_where_the_shift_is_closed_the_van_stands_until_it_opens():
    late = [shift(start=monday("13:00"))]
    assert starts(planned(rest(job("far", "far"), shifts=late)))["far"] == ("mon", "13:20")


def test_a_visit_promised_for_later_that_day_is_broken_if_it_cannot_be_reached():
    promised = job("far", "far", fixed={"shift": "mon", "start": monday("12:30")}, windows=[window()])
    assert broken_promises(rest(promised)) == []
    assert broken_promises(rest(promised, free="12:11")) == ["far"]


def test_an_unknown_shift_or_job_is_refused():
    with pytest.raises(ValueError, match="shifts"):
        with_day_so_far(week(job("here")), SoFar("tue", "here", at("09:00"), at("10:00")))
    with pytest.raises(ValueError, match="jobs"):
        with_day_so_far(week(job("a")), SoFar("mon", "here", at("09:00"), at("10:00")))


@settings(max_examples=examples(200), deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(small_weeks(), st.data())
def test_whatever_the_day_the_begun_visit_can_be_finished_and_the_plan_passes_the_audit(problem, data):
    if not problem["jobs"]:
        return
    one, shift_of = data.draw(st.sampled_from(problem["jobs"])), data.draw(st.sampled_from(problem["shifts"]))
    start, length = datetime.fromisoformat(shift_of["start"]), data.draw(st.integers(0, 20))
    free = start.fromtimestamp(start.timestamp() + 1800 * length, tz=start.tzinfo)
    word = SoFar(
        shift_of["id"],
        one["id"],
        start,
        free,
        None,
        data.draw(st.integers(0, 40)),
        data.draw(st.integers(0, 3)),
    )
    others = [each["id"] for each in problem["jobs"] if each is not one]
    begun = without_promises(with_day_so_far(problem, word), others)
    assert broken_promises(begun) == []
    board = Board(read_problem(json.dumps(begun)))
    at_work = [job["id"] for job in begun["jobs"]].index(one["id"])
    shift_at = [each["id"] for each in begun["shifts"]].index(word.shift)
    assert board.cost(shift_at, (at_work,)) < float("inf")
    assert audit_week(begun, planned(begun)) == []
