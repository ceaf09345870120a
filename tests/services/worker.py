"""A real Celery worker in a process of its own, on the test's database and the run's Valkey."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from urllib.parse import quote

from celery import Celery
from django.conf import settings
from django.db import connection

from tests.services.processes import running


@dataclass(frozen=True)
class Worker:
    process_id: int
    log: Path

    def said(self) -> str:
        return self.log.read_text(errors="replace")


@contextmanager
def worker(
    app: Celery, log: Path, *, processes: int = 1, broker: str | None = None, **told: str
) -> Iterator[Worker]:
    """Run `celery worker` until the block ends and yield it; jobs enqueued meanwhile go to it. `told`: more of its
    environment."""
    name = f"test-{os.getpid()}@localhost"
    command = [
        *(sys.executable, "-m", "celery", "--app", "trimops", "worker", "--loglevel", "INFO"),
        *("--hostname", name, "--concurrency", str(processes), "--without-gossip", "--without-mingle"),
    ]
    env = {
        **os.environ,
        "DATABASE_URL": database_url_of_test(),
        "DJANGO_SETTINGS_MODULE": "trimops.settings.base",
    }
    env |= {"REDIS_URL": broker or settings.REDIS_URL, **told}
    is_ready = partial(_is_ready, log)
    with running(command, log=log, is_ready=is_ready, env=env, cwd=settings.BASE_DIR) as process:
        was_eager = app.conf.task_always_eager
        app.conf.task_always_eager = False
        try:
            yield Worker(process.pid, log)
        finally:
            app.conf.task_always_eager = was_eager


def database_url_of_test() -> str:
    """DATABASE_URL of the database that the running test uses."""
    at = connection.settings_dict
    return f"postgres://{at['USER']}@{quote(str(at['HOST']), safe='')}/{at['NAME']}"


def _is_ready(log: Path) -> bool:
    return log.exists() and " ready." in log.read_text(errors="replace")
