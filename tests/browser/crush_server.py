"""A server that can be stopped in the middle of things: a process of its own on a copy of the test's database."""

import os
import signal
import sqlite3
import subprocess
import sys
from contextlib import closing
from pathlib import Path
from typing import Self
from urllib.error import URLError
from urllib.request import urlopen

from django.conf import settings
from django.db import connection

from tests.services.processes import bound_to_this_process, free_port, wait_until

GUNICORN = (sys.executable, "-m", "gunicorn", "trimops.wsgi", "--workers", "1", "--threads", "4")


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
        self._process: subprocess.Popen[bytes] | None = None
        with closing(sqlite3.connect(self._file)) as copy:
            _plain().backup(copy)

    def __enter__(self) -> Self:
        self.start()
        return self

    def __exit__(self, *_: object) -> None:
        self.stop()

    def start(self) -> None:
        """Come up at the same address; returns when it answers."""
        assert self._process is None, "it runs already"
        log = self.folder / "log"
        command = [*GUNICORN, "--no-control-socket", "--bind", f"127.0.0.1:{self.port}"]
        with log.open("ab") as output:
            self._process = subprocess.Popen(
                [*bound_to_this_process(signal.SIGKILL), *command],
                env=self._env(),
                cwd=settings.BASE_DIR,
                stdout=output,
                stderr=output,
                start_new_session=True,
            )
        wait_until(self._answers, self._process, log)

    def stop(self, how: signal.Signals = signal.SIGKILL) -> None:
        """End it at once, in the middle of whatever it does (SIGTERM: let it finish what it answers)."""
        if self._process is None:
            return
        # The group is its own (start_new_session): the master and its worker.
        os.killpg(self._process.pid, how)
        self._process.wait(30)
        self._process = None

    def bring_back(self) -> None:
        """Copy what it has written into the test's own database."""
        with closing(sqlite3.connect(self._file)) as copy:
            copy.backup(_plain())

    def know_session(self, key: str) -> None:
        """Copy a sign-in that the test has just made."""
        row = _plain().execute("SELECT * FROM django_session WHERE session_key = ?", [key]).fetchone()
        with closing(sqlite3.connect(self._file, timeout=20)) as copy, copy:
            copy.execute("INSERT INTO django_session VALUES (?, ?, ?)", row)

    def _answers(self) -> bool:
        try:
            with urlopen(f"{self.address}/account/login/", timeout=10) as answer:
                return bool(answer.status == 200)
        except (URLError, ConnectionError, TimeoutError):
            return False

    def _env(self) -> dict[str, str]:
        env = {name: value for name, value in os.environ.items() if name != "REDIS_URL"}
        return {
            **env,
            "DATABASE_URL": f"sqlite:///{self._file}",
            "DJANGO_SETTINGS_MODULE": "tests.browser.server_settings",
            "TRIMOPS_LATER_FILES": str(self.later_files),
            "TRIMOPS_DATA_DIR": str(self.folder / "data"),
            # The same as the test's, so that a sign-in made here is good there.
            "TRIMOPS_SECRET_KEY": settings.SECRET_KEY,
        }


def _plain() -> sqlite3.Connection:
    """The test's own connection, below Django."""
    connection.ensure_connection()
    plain = connection.connection
    assert isinstance(plain, sqlite3.Connection), (
        "the crush page's server runs on a copy of an SQLite database"
    )
    assert not plain.in_transaction, "take the fixture transactional_db: only what is committed can be copied"
    return plain
