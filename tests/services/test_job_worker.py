"""A job goes through a real broker to a real worker, and comes back when its worker is killed."""

import os
import signal
import time

import pytest
import redis
from django.conf import settings
from django.db import transaction

from tests.services.worker import Worker, worker
from trimops.celery import app
from trimops.jobs import Job, enqueue

pytestmark = pytest.mark.services
DONE = f"Task {Job.SWEEP_RECHECKS}["


def wait_for(what, seconds=60):
    deadline = time.monotonic() + seconds
    while not what():
        assert time.monotonic() < deadline, "waited in vain"
        time.sleep(0.1)


def is_done(said):
    return any(DONE in line and "succeeded" in line for line in said.splitlines())


def listeners():
    """Clients that wait at the broker for a job."""
    with redis.Redis.from_url(settings.REDIS_URL) as broker:
        return [client for client in broker.client_list() if "b" in client["flags"]]


def test_a_job_runs_in_the_worker_after_the_commit(job_worker: Worker):
    with transaction.atomic():
        enqueue(Job.SWEEP_RECHECKS)
        with redis.Redis.from_url(settings.REDIS_URL) as broker:
            assert broker.llen("celery") == 0
    wait_for(lambda: is_done(job_worker.said()))


def test_a_job_of_a_rolled_back_transaction_never_reaches_the_worker(job_worker: Worker):
    with transaction.atomic():
        enqueue(Job.SWEEP_RECHECKS)
        transaction.set_rollback(True)
    time.sleep(1)
    assert "received" not in job_worker.said()


def test_a_job_waits_at_the_broker_while_no_worker_lives(job_worker: Worker, tmp_path):
    # With its children: one that outlives it by a moment still holds its line to the broker, and a job sent
    # down that line is lost, whatever is acknowledged late.
    os.killpg(job_worker.process_id, signal.SIGKILL)
    wait_for(lambda: not listeners())
    app.conf.task_always_eager = False
    with transaction.atomic():
        enqueue(Job.SWEEP_RECHECKS)
    with worker(app, tmp_path / "second.log") as second:
        wait_for(lambda: is_done(second.said()))
