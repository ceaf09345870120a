"""The catalogue: words for people, and a timetable that names only jobs that exist."""

from datetime import time

from trimops.errands.kinds import KINDS
from trimops.errands.load_tasks import load_tasks
from trimops.jobs import DAILY, SCHEDULE, Job


def test_every_job_can_be_told_to_people_in_words_of_its_own():
    words = [job.label for job in Job]
    assert all(words)
    assert len(set(words)) == len(words)


def test_what_is_done_daily_is_an_errand_and_what_the_timetable_does_is_none():
    load_tasks()
    assert set(DAILY) <= set(KINDS)
    assert not set(SCHEDULE) & set(KINDS)
    assert not set(SCHEDULE) & set(DAILY)


def test_no_daily_hour_lies_where_a_days_own_hours_could_make_it_fall_on_another_day():
    """Clocks are put back at midnight in some zones: an hour right after it could come twice on two dates."""
    assert all(time(1) <= clock <= time(22) for clock in DAILY.values())


def test_a_long_thought_gets_a_process_of_its_own_where_there_is_no_worker():
    assert {job for job in Job if job.runs_apart} == {
        Job.PLAN_WEEK,
        Job.REPLAN_WEEK,
        Job.GIVE_REASONS,
        Job.PROVE_WEEK,
    }
