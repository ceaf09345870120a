"""The timetable's own tasks."""

from celery import shared_task
from django.utils import timezone

from trimops.errands.services.keep_backup import keep_backup
from trimops.errands.services.tick import tick
from trimops.jobs import Job


# because: who hangs in a tick holds its lock, and meanwhile nothing would be handed out
@shared_task(name=Job.TICK.value, soft_time_limit=60, time_limit=90)
def tick_task() -> None:
    tick(now=timezone.now())


@shared_task(name=Job.KEEP_BACKUP.value)
def keep_backup_task() -> None:
    keep_backup(now=timezone.now())
