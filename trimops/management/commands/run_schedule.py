"""`manage.py run_schedule`: start the timetable's jobs when they are due, for the form without Celery's beat."""

import time
from datetime import UTC, datetime

from celery.schedules import crontab
from django.core.management.base import BaseCommand

from trimops.jobs import SCHEDULE, Job, enqueue

LONGEST_NAP_SECONDS = 60.0


class Command(BaseCommand):
    help = "Starts each job of the timetable when it is due, until it is stopped."

    def handle(self, *args: object, **options: object) -> None:
        last_run = dict.fromkeys(SCHEDULE, datetime.now(UTC))
        while True:
            waits = [_start_if_due(job, when, last_run) for job, when in SCHEDULE.items()]
            time.sleep(min([*waits, LONGEST_NAP_SECONDS]))


def _start_if_due(job: Job, when: crontab, last_run: dict[Job, datetime]) -> float:
    """Enqueue `job` if its time has come; the seconds until it comes again."""
    is_due, seconds = when.is_due(last_run[job])
    if is_due:
        last_run[job] = datetime.now(UTC)
        enqueue(job)
    return seconds
