"""The catalogue of background jobs, and the one way to start one.

A job is named here and written as a Celery task of the same name in an app's `tasks.py`. It is handed ids,
never rows, and may run twice: it must do its work once all the same. With REDIS_URL set a worker runs it;
without, it runs in this process after the commit, or in a process of its own when it takes long.
"""

import logging
import os
import subprocess
import sys
import threading
from collections.abc import Callable, Mapping
from enum import StrEnum
from functools import cache, partial

from celery import current_app
from celery.schedules import crontab
from django.apps import apps
from django.conf import settings
from django.db import transaction

log = logging.getLogger(__name__)

Ids = Mapping[str, int]


class Job(StrEnum):
    """Every job there is; the value is the task's name."""

    BOOK_RECHECKS = "visits.book_rechecks"
    SWEEP_RECHECKS = "visits.sweep_rechecks"
    LEARN_ROADS = "visits.learn_roads"
    SWEEP_ROADS = "visits.sweep_roads"
    LEARN_LENGTHS = "visits.learn_lengths"
    PLAN_WEEK = "visits.plan_week"
    REPLAN_WEEK = "visits.replan_week"
    GIVE_REASONS = "visits.give_reasons"
    PROVE_WEEK = "visits.prove_week"
    DRAFT_INVOICE = "invoicing.draft_invoice"
    ISSUE_INVOICE = "invoicing.issue_invoice"
    SEND_PAPER = "invoicing.send_paper"
    SWEEP_SENDINGS = "invoicing.sweep_sendings"
    PROPOSE_REMINDERS = "invoicing.propose_reminders"
    KEEP_JOURNEYS = "invoicing.keep_journeys"
    ISSUE_REPORT = "visits.issue_report"
    TELL_REPORT = "trimops.tell_report"

    @property
    def runs_apart(self) -> bool:
        """True where the embedded form gives the job a process of its own, so that no page waits for it."""
        return self in (Job.PLAN_WEEK, Job.REPLAN_WEEK, Job.GIVE_REASONS, Job.PROVE_WEEK)


# Hourly, because a business's night begins at its own local hour; the task picks whose night it is.
SCHEDULE: dict[Job, crontab] = {
    Job.SWEEP_RECHECKS: crontab(minute=7),
    Job.LEARN_LENGTHS: crontab(minute=2),
    Job.SWEEP_ROADS: crontab(minute=37, hour=1),
    Job.SWEEP_SENDINGS: crontab(minute="*/5"),
    Job.PROPOSE_REMINDERS: crontab(minute=17),
    Job.KEEP_JOURNEYS: crontab(minute=22),
}


def enqueue(job: Job, **ids: int) -> None:
    """Have `job` done with `ids` once the transaction commits; never if it rolls back.

    A job that cannot be started, or fails in the process, is logged with its ids; the caller goes on.
    """
    transaction.on_commit(partial(_start, job, ids))


def run_here(job: Job, ids: Ids) -> None:
    """Do `job` now, in this process; what it raises is raised here. KeyError where no task bears its name."""
    load_tasks()
    current_app.tasks[job](**ids)


@cache
def load_tasks() -> None:
    """Import each app's `tasks.py`, so that the tasks are known outside a worker as well."""
    # Not Celery's own loading of default modules: that runs all of Django's checks each time.
    current_app.autodiscover_tasks([config.name for config in apps.get_app_configs()], force=True)


def _start(job: Job, ids: Ids) -> None:
    try:
        _way_to_run(job)(job, ids)
    except Exception:  # because: what was committed stands, and the page that did it must say so
        log.exception("job lost: %s %s", job, dict(ids))


def _way_to_run(job: Job) -> Callable[[Job, Ids], None]:
    if settings.REDIS_URL and not current_app.conf.task_always_eager:
        return _hand_to_worker
    return _run_apart if job.runs_apart and settings.JOBS_RUN_APART else run_here


def _hand_to_worker(job: Job, ids: Ids) -> None:
    current_app.send_task(job, kwargs=dict(ids))


def _run_apart(job: Job, ids: Ids) -> None:
    """Begin `job` in a process of its own and return at once."""
    words = [f"{name}={value}" for name, value in ids.items()]
    command = [sys.executable, "-m", "django", "run_job", job, *words]
    process = subprocess.Popen(command, cwd=settings.BASE_DIR, env=os.environ, stdin=subprocess.DEVNULL)
    threading.Thread(target=_see_off, args=(process, job, ids), daemon=True).start()


def _see_off(process: subprocess.Popen[bytes], job: Job, ids: Ids) -> None:
    """Wait for a job's own process, so that it leaves no zombie and its failure is logged."""
    if process.wait() != 0:
        log.error("job lost: %s %s ended with %s", job, dict(ids), process.returncode)
