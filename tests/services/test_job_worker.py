"""An errand goes through a real broker to a real worker, and waits there while no worker lives."""

import os
import signal
import time

import pytest
import redis
from django.conf import settings
from django.db import transaction

from tests.factories import make_business
from tests.services.worker import Worker, worker
from tests.trimops.errands.errand_hands import all_errands, now_of
from trimops.celery import app
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job

pytestmark = pytest.mark.services


def wait_for(what, seconds=60):
    deadline = time.monotonic() + seconds
    while not what():
        assert time.monotonic() < deadline, "waited in vain"
        time.sleep(0.1)


def ask():
    business = make_business()
    return enqueue(Job.SWEEP_RECHECKS, business.pk, business_id=business.pk)


def is_done(errand):
    return now_of(errand).state == "done"


def listeners():
    """Clients that wait at the broker for a job."""
    with redis.Redis.from_url(settings.REDIS_URL) as broker:
        return [client for client in broker.client_list() if "b" in client["flags"]]


def waiting():
    with redis.Redis.from_url(settings.REDIS_URL) as broker:
        return broker.llen(app.conf.task_default_queue)


def test_an_errand_is_done_by_the_worker_after_the_commit(job_worker: Worker):
    with transaction.atomic():
        errand = ask()
        assert waiting() == 0
    wait_for(lambda: is_done(errand))
    assert "succeeded" in job_worker.said()


def test_one_of_a_rolled_back_transaction_never_reaches_the_worker(job_worker: Worker):
    with transaction.atomic():
        ask()
        transaction.set_rollback(True)
    time.sleep(1)
    assert "received" not in job_worker.said()
    assert all_errands() == []


def test_an_errand_waits_at_the_broker_while_no_worker_lives(job_worker: Worker, tmp_path):
    # With its children: one that outlives it by a moment still holds its line to the broker, and a job sent
    # down that line comes back only after a while.
    os.killpg(job_worker.process_id, signal.SIGKILL)
    wait_for(lambda: not listeners())
    app.conf.task_always_eager = False
    errand = ask()
    assert waiting() == 1
    with worker(app, tmp_path / "second.log"):
        wait_for(lambda: is_done(errand))


def test_a_worker_reads_every_queue(job_worker: Worker):
    """Of rows that are gone, so that each is done as soon as it is read."""
    pk = make_business().pk
    errands = [
        enqueue(Job.LOOK_AT_WATCH, pk, watch_id=0),
        enqueue(Job.SEND_ALARM, pk, outgoing_id=0),
        enqueue(Job.PLAN_WEEK, pk, week_plan_id=0),
        enqueue(Job.BOOK_RECHECKS, pk, visit_id=0),
    ]
    wait_for(lambda: all(is_done(errand) for errand in errands))
