"""The catalogue of jobs is the list of tasks, neither more nor less; the timetable names jobs that exist."""

import inspect

import pytest

from trimops.celery import TASK_SECONDS, VISIBILITY_SECONDS, app
from trimops.jobs import SCHEDULE, Job


@pytest.fixture(scope="module")
def own_tasks():
    app.loader.import_default_modules()
    return {name: task for name, task in app.tasks.items() if not name.startswith("celery.")}


def test_every_job_is_a_task_and_every_task_a_job(own_tasks):
    assert set(own_tasks) == set(Job)


def test_a_job_is_named_after_its_app_and_its_task_function(own_tasks):
    named = {name: f"{task.__module__.split('.')[0]}.{task.run.__name__}" for name, task in own_tasks.items()}
    assert named == {name: f"{name}_task" for name in own_tasks}


def test_the_beat_runs_the_timetable_and_nothing_else():
    assert {entry["task"] for entry in app.conf.beat_schedule.values()} == set(SCHEDULE)


def test_what_the_timetable_starts_needs_no_ids(own_tasks):
    for job in SCHEDULE:
        needed = [
            p for p in inspect.signature(own_tasks[job].run).parameters.values() if p.default is p.empty
        ]
        assert not needed, job


def test_the_broker_waits_longer_than_any_task_may_take():
    assert app.conf.broker_transport_options["visibility_timeout"] == VISIBILITY_SECONDS
    assert app.conf.task_time_limit == TASK_SECONDS < VISIBILITY_SECONDS


def test_a_task_lost_with_its_worker_comes_back():
    assert app.conf.task_acks_late
    assert app.conf.task_reject_on_worker_lost
    assert app.conf.worker_prefetch_multiplier == 1
