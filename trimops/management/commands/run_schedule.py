"""`manage.py run_schedule`: start the timetable's jobs when they are due, for the form without Celery's beat."""

import logging
import threading
import time
from datetime import UTC, datetime

from celery import current_app
from celery.schedules import BaseSchedule
from django.core.management.base import BaseCommand, CommandError
from django.db import close_old_connections

from trimops.errands.load_tasks import load_tasks
from trimops.jobs import SCHEDULE, Job

log = logging.getLogger(__name__)

LONGEST_NAP_SECONDS = 10.0


class Command(BaseCommand):
    help = "Does each job of the timetable when it is due, and the errands that wait, until it is stopped."

    def handle(self, *args: object, **options: object) -> None:
        load_tasks()
        # because: nobody who works alone may wait until a night is swept or a backup is made
        threads = [
            threading.Thread(target=_keep, args=(job, when), name=job.value, daemon=True)
            for job, when in SCHEDULE.items()
        ]
        for thread in threads:
            thread.start()
        while all(thread.is_alive() for thread in threads):
            time.sleep(1.0)
        raise CommandError("A part of the timetable ended; whoever started this starts it again.")


def _keep(job: Job, when: BaseSchedule) -> None:
    """Do one job whenever its time has come, for good."""
    last_run = {job: datetime.now(UTC)}
    while True:
        wait = _run_if_due(job, when, last_run)
        close_old_connections()
        time.sleep(max(0.0, min(wait, LONGEST_NAP_SECONDS)))


def _run_if_due(job: Job, when: BaseSchedule, last_run: dict[Job, datetime]) -> float:
    """Do `job` if its time has come; the seconds until it comes again."""
    is_due, seconds = when.is_due(last_run[job])
    if is_due:
        last_run[job] = datetime.now(UTC)
        try:
            current_app.tasks[job]()
        except Exception:  # because: one job that fails must not stop the timetable
            log.exception("failed: %s", job)
    return float(seconds)
