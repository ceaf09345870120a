"""Celery, for the grown-up form: workers and beat on the broker that REDIS_URL names.

Started by `celery -A trimops worker` and `celery -A trimops beat`. Without REDIS_URL the app still holds
the tasks, and `trimops.jobs` runs them in the process.
"""

import os

from celery import Celery
from django.conf import settings

from trimops.jobs import SCHEDULE

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "trimops.settings.base")

TASK_SECONDS = 25 * 60
# A task still running when this runs out is given to a second worker as well, so it must exceed TASK_SECONDS.
VISIBILITY_SECONDS = 60 * 60

app = Celery("trimops", broker=settings.REDIS_URL or "memory://")
# Without this a web thread other than the first sees an empty app and finds no task.
app.set_default()
app.conf.update(
    accept_content=["json"],
    task_serializer="json",
    task_ignore_result=True,
    timezone="UTC",
    enable_utc=True,
    task_acks_late=True,
    task_reject_on_worker_lost=True,
    worker_prefetch_multiplier=1,
    worker_cancel_long_running_tasks_on_connection_loss=True,
    task_soft_time_limit=TASK_SECONDS - 60,
    task_time_limit=TASK_SECONDS,
    broker_connection_retry_on_startup=True,
    broker_transport_options={
        "visibility_timeout": VISIBILITY_SECONDS,
        # The defaults look for lost tasks every 10 x 10 seconds; this looks every second.
        "unacked_restore_interval": 1,
        "unacked_restore_throttle": 1,
        # A request that enqueues while the broker is away waits this long, not for ever.
        "socket_connect_timeout": 3,
        "socket_keepalive": True,
    },
    beat_schedule={str(job): {"task": str(job), "schedule": when} for job, when in SCHEDULE.items()},
)
app.autodiscover_tasks()
