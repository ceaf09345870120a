"""The parts that must work before this process can: each says in a few words what fails, or "".

The words are for whoever runs the site and are shown to all, so they name no host, no file and no fault's text.
"""

import logging
import shutil
import tempfile
import time
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path

import redis
from django.conf import settings
from django.db import DatabaseError, InterfaceError, connection
from django.db.migrations.executor import MigrationExecutor
from django.utils import timezone

from trimops.watch.timetable import last_beat
from trimops.web.release_files import is_collected

log = logging.getLogger(__name__)

MEGABYTE = 1024 * 1024
BROKER_SECONDS = 2


def what_is_not_ready(now: datetime) -> dict[str, str]:
    """Every part's name with what fails of it, "" where it works."""
    return {name: _asked(name, part, now) for name, part in PARTS.items()}


def _asked(name: str, part: Callable[[datetime], str], now: datetime) -> str:
    try:
        fault = part(now)
    except Exception:  # because: whatever breaks while a part is looked at, that part is not ready
        log.warning("not ready: %s", name, exc_info=True)
        return "fails"
    return fault


def _database(now: datetime) -> str:
    try:
        with connection.cursor() as cursor:
            cursor.execute("SELECT 1")
            cursor.fetchone()
    except (DatabaseError, InterfaceError):
        log.warning("not ready: the database does not answer", exc_info=True)
        return "does not answer"
    return ""


class _Migrations:
    """Looked at until all are applied: then they stay so for as long as this process holds this program."""

    PAUSE_SECONDS = 5

    def __init__(self) -> None:
        self.fault, self.asked_at = "not looked at", float("-inf")

    def __call__(self, now: datetime) -> str:
        if self.fault and time.monotonic() - self.asked_at > self.PAUSE_SECONDS:
            self.fault = self._look()
            self.asked_at = time.monotonic()
        return self.fault

    def _look(self) -> str:
        executor = MigrationExecutor(connection)
        waiting = executor.migration_plan(executor.loader.graph.leaf_nodes())
        return f"{len(waiting)} not applied: run migrate" if waiting else ""


def _broker(now: datetime) -> str:
    if not settings.REDIS_URL:
        return ""
    client = redis.Redis.from_url(
        settings.REDIS_URL, socket_connect_timeout=BROKER_SECONDS, socket_timeout=BROKER_SECONDS
    )
    try:
        client.ping()
    except redis.exceptions.RedisError:
        return "does not answer"
    finally:
        client.close()
    return ""


def _disk(now: datetime) -> str:
    folder = Path(settings.DATA_DIR)
    if shutil.disk_usage(folder).free < settings.DISK_FREE_MB * MEGABYTE:
        return f"less than {settings.DISK_FREE_MB} MB free"
    try:
        with tempfile.TemporaryFile(dir=folder) as probe:
            probe.write(b"x")
            probe.flush()
    except OSError:
        return "cannot be written"
    return ""


class _Timetable:
    """Whether jobs are being looked for: what keeps the timetable leaves a sign of life at each tick."""

    def __init__(self, began: datetime) -> None:
        # Nobody is late before this process has been there for so long itself.
        self.began = began

    def __call__(self, now: datetime) -> str:
        beat = last_beat() or self.began
        if now - max(beat, self.began) <= timedelta(minutes=settings.TIMETABLE_MINUTES):
            return ""
        return f"no sign of life for more than {settings.TIMETABLE_MINUTES} minutes"


def _files(now: datetime) -> str:
    return "" if is_collected() else "not collected: run collectstatic"


PARTS: dict[str, Callable[[datetime], str]] = {
    "database": _database,
    "migrations": _Migrations(),
    "broker": _broker,
    "disk": _disk,
    "timetable": _Timetable(began=timezone.now()),
    "files": _files,
}
