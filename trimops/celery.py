"""Celery, for the grown-up form: workers and beat on the broker that REDIS_URL names.

Started by `celery -A trimops worker` and `celery -A trimops beat`. Without REDIS_URL the app still holds
the tasks, and `trimops.errands` runs them in the process.
"""

import os

from celery import Celery
from django.conf import settings
from kombu import Queue

from trimops.jobs import PROMPT_QUEUE, QUEUES, SCHEDULE, Job, schedule_queue_of

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "trimops.settings.base")

TASK_SECONDS = 25 * 60
"""The longest that any task may take; most say less (`does`)."""
VISIBILITY_SECONDS = 60
"""A task whose worker vanished is given to another after this. One that still runs is as well, which does no harm: an
errand is locked by whoever is at it, and the second finds it taken."""
TICK_SECONDS, MINUTE_SECONDS = 10, 60

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
    # because: the log is ours, with its marks and without secrets
    worker_hijack_root_logger=False,
    # What is under way when the broker goes away is finished: whoever is given it again finds it locked, then done.
    worker_cancel_long_running_tasks_on_connection_loss=False,
    task_default_queue=PROMPT_QUEUE,
    task_queues=tuple(Queue(name, routing_key=name) for name in QUEUES),
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
        "socket_timeout": 10,
        "socket_keepalive": True,
    },
    # Nobody needs one that waited longer: the next one does its work.
    beat_schedule={
        str(job): {
            "task": str(job),
            "schedule": when,
            "options": {
                "expires": TICK_SECONDS if job is Job.TICK else MINUTE_SECONDS,
                "queue": schedule_queue_of(job),
            },
        }
        for job, when in SCHEDULE.items()
    },
)
app.autodiscover_tasks()
