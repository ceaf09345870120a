"""How a job is told what is done for it, and what a worker is told of it."""

import pytest

from tests.trimops.errands.errand_hands import now_of, set_work, written
from trimops.celery import app
from trimops.errands.kinds import EXTRA_SECONDS, KINDS
from trimops.errands.load_tasks import load_tasks
from trimops.jobs import Job


def test_a_workers_task_has_the_time_that_its_job_says():
    load_tasks()
    for job, kind in KINDS.items():
        task = app.tasks[job.value]
        assert (task.soft_time_limit, task.time_limit) == (kind.seconds, kind.seconds + EXTRA_SECONDS), job
        assert kind.seconds + EXTRA_SECONDS <= app.conf.task_time_limit, job


@pytest.mark.django_db(transaction=True)
def test_the_task_does_the_errand_of_its_number(monkeypatch):
    calls = set_work(monkeypatch, lambda time: None)
    errand = written(ids={"visit_id": 7})
    app.tasks[Job.DRAFT_INVOICE.value](errand_id=errand.pk)
    assert (calls, now_of(errand).state) == ([{"visit_id": 7}], "done")
