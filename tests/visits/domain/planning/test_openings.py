import json

from tests.visits.domain.planning.hand_made import job, monday, shift, week, window
from visits.domain.planning.openings import days_late, openings
from visits.domain.planning.read_problem import read_problem

NIGHT = shift(start=monday("20:00"), end="2026-03-03T06:00:00+00:00")


def opened(made, day=None, zone="Europe/London"):
    """Openings as (first minute, last minute, lateness) from the shift's start."""
    problem = read_problem(json.dumps(week(made, shifts=[day or shift()], timezone=zone)))
    zero = problem.shifts[0].start
    return [
        ((o.first - zero) / 600, (o.last - zero) / 600, o.late) for o in openings(problem, 0, problem.jobs[0])
    ]


def test_an_opening_ends_where_the_job_would_no_longer_be_done_in_time():
    assert opened(job("a", windows=[window("08:00", "10:00")])) == [(60, 120, 0)]


def test_windows_are_cut_to_the_shift_and_sorted():
    windows = [window("17:00", "20:00"), window("05:00", "08:30"), window("08:00", "09:30")]
    assert opened(job("a", windows=windows)) == [(0, 30, 0), (60, 90, 0)]


def test_starts_that_overlap_are_one_opening():
    assert opened(job("a", windows=[window("08:00", "10:00"), window("08:30", "12:00")])) == [(60, 240, 0)]


def test_windows_that_only_touch_stay_apart_since_a_job_lies_inside_one():
    assert opened(job("a", windows=[window("08:00", "10:00"), window("10:00", "12:00")])) == [
        (60, 120, 0),
        (180, 240, 0),
    ]


def test_a_crew_that_is_not_allowed_has_no_opening():
    assert opened(job("a", crews=["ben"])) == []


def test_a_promise_leaves_one_moment_or_none():
    assert opened(job("a", fixed={"shift": "mon", "start": monday("09:00")})) == [(120, 120, 0)]
    assert opened(job("a", fixed={"shift": "mon", "start": monday("17:00")})) == []


def test_lateness_steps_up_at_local_midnight_only():
    late = {"due": "2026-03-01", "late_cost_per_day": 100}
    made = job("a", windows=[{"start": NIGHT["start"], "end": NIGHT["end"]}], **late)
    before = (239 * 600 + 599) / 600
    assert opened(made, NIGHT) == [(0, before, 100), (240, 540, 200)]
    assert opened(made, NIGHT, zone="Pacific/Auckland") == [(0, 540, 200)]


def test_days_late_count_the_calendar_of_the_zone():
    problem = read_problem(json.dumps(week(job("a", due="2026-03-02"), timezone="Pacific/Auckland")))
    noon = problem.shifts[0].start + 5 * 36_000
    assert days_late(problem.jobs[0], noon - 3 * 36_000, problem.zone) == 0
    assert days_late(problem.jobs[0], noon, problem.zone) == 1
