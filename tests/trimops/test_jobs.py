"""Starting a job in the embedded form: after the commit, in the process, and never at the caller's cost."""

import logging
import sys

import pytest
from celery import Celery, Task
from django.core.management import CommandError, call_command
from django.db import transaction

from trimops import jobs
from trimops.celery import app
from trimops.jobs import Job, enqueue, load_tasks, run_here


@pytest.fixture
def done(monkeypatch):
    """What the probe that stands in for two tasks was handed, in order."""
    handed: list[dict[str, int]] = []

    class Probe(Task):
        def run(self, **ids):
            handed.append(ids)
            if ids.get("visit_id") == 13:
                raise ZeroDivisionError

    load_tasks()
    Probe.bind(app)
    for job in (Job.DRAFT_INVOICE, Job.PLAN_WEEK):
        monkeypatch.setitem(app.tasks, job.value, Probe())
    return handed


@pytest.mark.django_db(transaction=True)
def test_a_job_runs_after_the_commit_and_not_before(done):
    with transaction.atomic():
        enqueue(Job.DRAFT_INVOICE, visit_id=7)
        assert done == []
    assert done == [{"visit_id": 7}]


@pytest.mark.django_db(transaction=True)
def test_a_job_of_a_rolled_back_transaction_never_runs(done):
    with transaction.atomic():
        enqueue(Job.DRAFT_INVOICE, visit_id=7)
        transaction.set_rollback(True)
    assert done == []


@pytest.mark.django_db(transaction=True)
def test_a_job_that_fails_leaves_the_caller_and_the_next_job_alone(done, caplog):
    with caplog.at_level(logging.ERROR), transaction.atomic():
        enqueue(Job.DRAFT_INVOICE, visit_id=13)
        enqueue(Job.DRAFT_INVOICE, visit_id=14)
    assert done == [{"visit_id": 13}, {"visit_id": 14}]
    assert "job lost: invoicing.draft_invoice {'visit_id': 13}" in caplog.text
    assert "ZeroDivisionError" in caplog.text


@pytest.mark.django_db(transaction=True)
def test_a_long_job_gets_a_process_of_its_own(settings, monkeypatch, caplog, tmp_path, done):
    """The stand-in for Python writes down how it was called, and fails: the failure is logged, not raised."""
    settings.JOBS_RUN_APART = True
    called = tmp_path / "called"
    stand_in = tmp_path / "python"
    stand_in.write_text(f'#!/bin/sh\necho "$@" > {called}\nexit 3\n')
    stand_in.chmod(0o755)
    monkeypatch.setattr(sys, "executable", str(stand_in))
    waits = []
    monkeypatch.setattr(jobs.threading.Thread, "start", lambda thread: waits.append(thread))
    enqueue(Job.PLAN_WEEK, week_plan_id=5)
    with caplog.at_level(logging.ERROR):
        waits[0].run()
    assert called.read_text().split() == ["-m", "django", "run_job", "visits.plan_week", "week_plan_id=5"]
    assert "job lost: visits.plan_week {'week_plan_id': 5} ended with 3" in caplog.text
    assert done == []


@pytest.fixture
def broker_away(settings):
    """Port 1 refuses: a real client at a broker that nobody runs."""
    settings.REDIS_URL = "redis://127.0.0.1:1/0"
    Celery("away", broker=settings.REDIS_URL)
    yield
    app.set_current()


@pytest.mark.django_db(transaction=True)
def test_a_broker_that_is_away_costs_the_job_and_not_the_page(broker_away, caplog):
    with caplog.at_level(logging.ERROR):
        enqueue(Job.DRAFT_INVOICE, visit_id=7)
    assert "job lost: invoicing.draft_invoice {'visit_id': 7}" in caplog.text
    assert "OperationalError" in caplog.text


def test_the_command_runs_one_job_and_raises_what_it_raises(done):
    call_command("run_job", "invoicing.draft_invoice", "visit_id=7")
    assert done == [{"visit_id": 7}]
    with pytest.raises(ZeroDivisionError):
        run_here(Job.DRAFT_INVOICE, {"visit_id": 13})


@pytest.mark.parametrize("word", ["visit_id", "visit_id=", "visit_id=x", "1=1"])
def test_the_command_refuses_what_is_no_id(word, done):
    with pytest.raises(CommandError, match="not of the form"):
        call_command("run_job", "invoicing.draft_invoice", word)
