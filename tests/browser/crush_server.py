"""A server that can be stopped in the middle of things: a process of its own on a copy of the test's database."""

import atexit
import json
import os
import signal
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Self
from urllib.error import URLError
from urllib.request import urlopen

from django.conf import settings
from django.db import connection

from tests.browser.warm_site import Wanted
from tests.services.processes import bound_to_this_process, free_port, wait_until


@dataclass(frozen=True)
class Group:
    """A server that was made of the site loaded already, and all its processes."""

    pid: int
    args: Wanted

    def poll(self) -> int | None:
        """None while its first process is there."""
        try:
            os.kill(self.pid, 0)
        except ProcessLookupError:
            return -1
        return None

    def end(self, how: signal.Signals) -> None:
        os.killpg(self.pid, how)
        deadline = time.monotonic() + 60
        while self.poll() is None:
            assert time.monotonic() < deadline, "the server lives on"
            time.sleep(0.01)


@cache
def _warm_site() -> subprocess.Popen[str]:
    """The site, loaded once in this test process's time."""
    site = subprocess.Popen(
        [*bound_to_this_process(signal.SIGKILL), sys.executable, "-m", "tests.browser.warm_site"],
        env=_env(),
        cwd=settings.BASE_DIR,
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        start_new_session=True,
    )
    atexit.register(site.communicate)
    return site


def _env() -> dict[str, str]:
    env = {name: value for name, value in os.environ.items() if name not in ("REDIS_URL", "DATABASE_URL")}
    # The secret is the test's, so that a sign-in made here is good there.
    return {
        **env,
        "DJANGO_SETTINGS_MODULE": "trimops.settings.test",
        "TRIMOPS_SECRET_KEY": settings.SECRET_KEY,
    }


def _become(wanted: Wanted) -> Group:
    site = _warm_site()
    assert site.stdin is not None
    assert site.stdout is not None
    site.stdin.write(json.dumps(wanted) + "\n")
    site.stdin.flush()
    return Group(int(site.stdout.readline()), wanted)


class Server:
    """One address for good, and an SQLite file that outlives each stop.

    `bring_back()` copies what it has written into the test's own database, so that the test looks at it with the
    models as ever. The test takes the fixture `transactional_db`: only what is committed can be copied.
    """

    def __init__(self, folder: Path) -> None:
        folder.mkdir(parents=True, exist_ok=True)
        self.folder = folder
        self.port = free_port()
        # Service workers want a secure place, and browsers take localhost for one.
        self.address = f"http://localhost:{self.port}"
        # Static files put here take the place of ours: what a later version of the site would serve.
        self.later_files = folder / "later"
        self.later_files.mkdir(exist_ok=True)
        self._file = folder / "site.sqlite3"
        self._group: Group | None = None
        with closing(sqlite3.connect(self._file)) as copy:
            _plain().backup(copy)

    def __enter__(self) -> Self:
        self.start()
        return self

    def __exit__(self, *_: object) -> None:
        self.stop()

    def start(self) -> None:
        """Come up at the same address; returns when it answers."""
        assert self._group is None, "it runs already"
        log = self.folder / "log"
        self._group = _become(
            {
                "database": str(self._file),
                "log": str(log),
                "later_files": str(self.later_files),
                "port": self.port,
            }
        )
        wait_until(self._answers, self._group, log, seconds=120)

    def stop(self, how: signal.Signals = signal.SIGKILL) -> None:
        """End it at once, in the middle of whatever it does (SIGTERM: let it finish what it answers)."""
        if self._group is None:
            return
        self._group.end(how)
        self._group = None

    def bring_back(self) -> None:
        """Copy what it has written into the test's own database."""
        with closing(sqlite3.connect(self._file)) as copy:
            copy.backup(_plain())

    def know_session(self, key: str) -> None:
        """Copy a sign-in that the test has just made."""
        row = _plain().execute("SELECT * FROM django_session WHERE session_key = ?", [key]).fetchone()
        with closing(sqlite3.connect(self._file, timeout=60)) as copy, copy:
            copy.execute("INSERT INTO django_session VALUES (?, ?, ?)", row)

    def _answers(self) -> bool:
        try:
            with urlopen(f"{self.address}/account/login/", timeout=30) as answer:
                return bool(answer.status == 200)
        except (URLError, ConnectionError, TimeoutError):
            return False


def _plain() -> sqlite3.Connection:
    """The test's own connection, below Django."""
    connection.ensure_connection()
    plain = connection.connection
    assert isinstance(plain, sqlite3.Connection), (
        "the crush page's server runs on a copy of an SQLite database"
    )
    assert not plain.in_transaction, "take the fixture transactional_db: only what is committed can be copied"
    return plain
