"""An errand goes to whoever does it: a worker, this process, a thread beside it, or a process of its own."""

import logging
import os
import subprocess
import sys
import threading
import time
from concurrent.futures import ThreadPoolExecutor

from celery import current_app
from django.conf import settings
from django.db import connection

from trimops.errands.kinds import EXTRA_SECONDS, KINDS
from trimops.errands.load_tasks import load_tasks
from trimops.errands.models import Errand
from trimops.errands.services.run_errand import run_errand
from trimops.jobs import URGENT_JOBS, Job, queue_of
from trimops.tenancy.unscoped import unscoped

log = logging.getLogger(__name__)

# because: one after the other, so that a run of a hundred mails opens no hundred lines and waits for no lock
BESIDE = ThreadPoolExecutor(max_workers=1, thread_name_prefix="beside")
ALARMS_BESIDE = ThreadPoolExecutor(max_workers=1, thread_name_prefix="alarms")
_waits_beside: set[int] = set()
_beside_guard = threading.Lock()

AWAY_SECONDS = 5.0
"""A broker that did not answer is left alone so long, so that a page with many errands waits for it once."""
ONE_MORE_TRY = {"max_retries": 1, "interval_start": 0.0, "interval_step": 0.1, "interval_max": 0.1}

_broker_away_until = 0.0


def hand_out(*, job: str, errand_id: int, is_daily: bool = False) -> None:
    """Start it. What goes wrong is logged; the errand is kept, and the next tick hands it out again."""
    try:
        if goes_to_workers():
            _send(job, errand_id, is_daily)
        elif Job(job).runs_apart and settings.JOBS_RUN_APART:
            _run_apart(Job(job), errand_id)
        elif Job(job).runs_beside and settings.JOBS_RUN_APART:
            _hand_beside(Job(job), errand_id)
        else:
            run_errand(errand_id=errand_id)
    except Exception:  # because: what was committed stands, and the page that did it must say so
        log.exception("not started: %s, errand %s", job, errand_id)


def goes_to_workers() -> bool:
    return bool(settings.REDIS_URL) and not current_app.conf.task_always_eager


def _send(job: str, errand_id: int, is_daily: bool) -> None:
    global _broker_away_until
    if time.monotonic() >= _broker_away_until:
        queue = queue_of(job, is_daily=is_daily)
        try:
            current_app.send_task(
                job, kwargs={"errand_id": errand_id}, queue=queue, retry=True, retry_policy=ONE_MORE_TRY
            )
        except Exception:
            _broker_away_until = time.monotonic() + AWAY_SECONDS
            _take_back(errand_id)
            raise
    else:
        _take_back(errand_id)


def _take_back(errand_id: int) -> None:
    """The broker does not have it, so nobody need wait whether it comes from there."""
    with unscoped("an errand is handed out by its number"):
        Errand.objects.filter(pk=errand_id).update(handed_out_at=None)


def _hand_beside(job: Job, errand_id: int) -> None:
    """Each waits there once: behind a slow server it is handed out again by every tick."""
    with _beside_guard:
        if errand_id in _waits_beside:
            return
        _waits_beside.add(errand_id)
    (ALARMS_BESIDE if job in URGENT_JOBS else BESIDE).submit(_run_beside, errand_id)


def _run_beside(errand_id: int) -> None:
    with _beside_guard:
        _waits_beside.discard(errand_id)
    try:
        run_errand(errand_id=errand_id)
    except Exception:  # because: nobody waits for it; the errand is kept and handed out again later
        log.exception("not done beside: errand %s", errand_id)
    finally:
        connection.close()


def _run_apart(job: Job, errand_id: int) -> None:
    """Begin it in a process of its own and return at once."""
    load_tasks()
    command = [sys.executable, "-m", "django", "run_errand", str(errand_id)]
    process = subprocess.Popen(command, cwd=settings.BASE_DIR, env=os.environ, stdin=subprocess.DEVNULL)
    seconds = KINDS[job].seconds + EXTRA_SECONDS
    threading.Thread(target=_see_off, args=(process, errand_id, seconds), daemon=True).start()


def _see_off(process: subprocess.Popen[bytes], errand_id: int, seconds: float) -> None:
    """Wait for an errand's own process, so that it leaves no zombie; its failure is logged, and it is ended by force
    where it takes too long."""
    try:
        ended_with = process.wait(seconds)
    except subprocess.TimeoutExpired:
        process.kill()
        ended_with = process.wait()
    if ended_with != 0:
        log.error("errand %s: its process ended with %s", errand_id, ended_with)
