"""The catalogue of jobs is the list of tasks, neither more nor less; the timetable names jobs that exist."""

import inspect

import pytest

from trimops.celery import TASK_SECONDS, VISIBILITY_SECONDS, app
from trimops.errands.kinds import KINDS
from trimops.errands.load_tasks import load_tasks
from trimops.jobs import QUEUES, SCHEDULE, Job


@pytest.fixture(scope="module")
def own_tasks():
    app.loader.import_default_modules()
    return {name: task for name, task in app.tasks.items() if not name.startswith("celery.")}


def test_every_job_is_a_task_and_every_task_a_job(own_tasks):
    assert set(own_tasks) == set(Job)


def test_a_job_is_named_after_its_app_and_its_task_function(own_tasks):
    load_tasks()
    shown = {job.value: kind.work for job, kind in KINDS.items()}
    functions = {name: shown.get(name, task.run) for name, task in own_tasks.items()}
    named = {name: f"{work.__module__.split('.')[0]}.{work.__name__}" for name, work in functions.items()}
    assert named == {name: f"{name}_task" for name in own_tasks}


def test_the_beat_runs_the_timetable_and_nothing_else():
    assert {entry["task"] for entry in app.conf.beat_schedule.values()} == set(SCHEDULE)


def test_what_the_timetable_starts_needs_no_ids(own_tasks):
    for job in SCHEDULE:
        needed = [
            p for p in inspect.signature(own_tasks[job].run).parameters.values() if p.default is p.empty
        ]
        assert not needed, job


def test_the_broker_gives_a_task_whose_worker_vanished_to_another_within_a_minute():
    """Also one that is still at it: the errand's own lock keeps the second from it, so nothing is done twice."""
    assert app.conf.broker_transport_options["visibility_timeout"] == VISIBILITY_SECONDS <= 60
    assert app.conf.task_time_limit == TASK_SECONDS


def test_what_is_under_way_outlives_the_broker():
    assert not app.conf.worker_cancel_long_running_tasks_on_connection_loss


def test_a_task_lost_with_its_worker_comes_back():
    assert app.conf.task_acks_late
    assert app.conf.task_reject_on_worker_lost
    assert app.conf.worker_prefetch_multiplier == 1


def test_the_timetable_waits_behind_nothing_and_holds_up_nobody():
    """A tick and a look at the watches lapse in seconds: behind an evening's mails each of them would."""
    queues = {entry["task"]: entry["options"]["queue"] for entry in app.conf.beat_schedule.values()}
    assert queues.pop(Job.KEEP_BACKUP) == "long"
    assert set(queues.values()) == {"urgent"}
    assert {queue.name for queue in app.conf.task_queues} == set(QUEUES)


def test_a_tick_that_hangs_is_ended_before_anybody_misses_it(own_tasks):
    """It holds the lock of all ticks: nothing would be handed out meanwhile."""
    assert own_tasks[Job.TICK].soft_time_limit < own_tasks[Job.TICK].time_limit <= 120
