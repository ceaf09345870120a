"""The timetable of the embedded form: each job when it is due, and a failing one keeps no other from it."""

from datetime import UTC, datetime, timedelta
from threading import Event

import pytest
from celery import current_app
from celery.schedules import schedule
from django.core.management.base import CommandError

from trimops.errands.load_tasks import load_tasks
from trimops.jobs import SCHEDULE, Job
from trimops.management.commands import run_schedule
from trimops.management.commands.run_schedule import _run_if_due


@pytest.fixture
def done(monkeypatch):
    """Which jobs were done; the first one fails."""
    calls = []

    def probe(job):
        def work():
            calls.append(job)
            if job is Job.TICK:
                raise OSError("the database is away")

        return work

    load_tasks()
    for job in SCHEDULE:
        monkeypatch.setitem(current_app.tasks, job.value, probe(job))
    return calls


def test_what_is_due_is_done_once_and_then_waits_its_time(done, caplog):
    long_ago = datetime.now(UTC) - timedelta(hours=1)
    last_run = dict.fromkeys(SCHEDULE, long_ago)
    waits = {job: _run_if_due(job, when, last_run) for job, when in SCHEDULE.items()}
    assert set(done) == set(SCHEDULE)
    assert "failed: trimops.tick" in caplog.text
    assert 0 < waits[Job.TICK] <= 10
    for job, when in SCHEDULE.items():
        _run_if_due(job, when, last_run)
    assert len(done) == len(SCHEDULE)


def test_what_is_not_due_yet_is_left(done):
    last_run = dict.fromkeys(SCHEDULE, datetime.now(UTC))
    assert _run_if_due(Job.TICK, SCHEDULE[Job.TICK], last_run) > 8
    assert done == []


# because: each thread of this test is ended from within, by what no job catches
@pytest.mark.filterwarnings("ignore::pytest.PytestUnhandledThreadExceptionWarning")
def test_a_job_that_takes_long_keeps_no_other_from_its_time(monkeypatch):
    """Here a backup waits until the watches were looked at twice; then it ends, and the command with it."""
    looks, looked = [], Event()

    def long_one():
        assert looked.wait(20)
        raise SystemExit

    def look():
        looks.append(1)
        if len(looks) == 2:
            looked.set()
        if len(looks) == 3:
            raise SystemExit

    load_tasks()
    often = {Job.KEEP_BACKUP: schedule(0.02), Job.LOOK_AT_WATCHES: schedule(0.02)}
    monkeypatch.setattr(run_schedule, "SCHEDULE", often)
    monkeypatch.setitem(current_app.tasks, Job.KEEP_BACKUP.value, long_one)
    monkeypatch.setitem(current_app.tasks, Job.LOOK_AT_WATCHES.value, look)
    with pytest.raises(CommandError, match="ended"):
        run_schedule.Command().handle()
    assert len(looks) >= 2
