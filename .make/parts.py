"""Run the parts of a stack side by side in one foreground process, start again what dies, stop all together.

Each line that a part writes is passed on behind its name. A part that dies is started again after a pause that
doubles (1, 2, 4 ... 30 seconds); one that dies MOST_DEATHS times without ever having stood for STOOD_SECONDS ends it
all, loudly: something is wrong that starting again does not mend.
"""

import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import IO, NoReturn

from tests.services.processes import bound_to_this_process, stop

SIGNALS = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)
MOST_DEATHS = int(os.environ.get("TRIMOPS_UP_DEATHS", "5"))
STOOD_SECONDS = float(os.environ.get("TRIMOPS_UP_STOOD", "60"))
FIRST_PAUSE = float(os.environ.get("TRIMOPS_UP_PAUSE", "1"))
LONGEST_PAUSE = 30.0


class Stopped(BaseException):
    """Ctrl-C, or the machine asks this process to end."""


def web_server() -> list[str]:
    """The command of the web server; what it does else stands in gunicorn.conf.py."""
    return [sys.executable, "-m", "gunicorn", "--config", ".make/gunicorn.conf.py", "trimops.wsgi"]


def listen_for_stop() -> None:
    for asked in SIGNALS:
        signal.signal(asked, _stop)


def as_program(main: Callable[[], int]) -> NoReturn:
    """Run `main` and leave with its exit code; a stop asked for while it starts is no failure."""
    listen_for_stop()
    try:
        sys.exit(main())
    except Stopped:
        sys.exit(0)


@dataclass
class Part:
    """One process that is meant to stand, and how often it did not."""

    name: str
    command: list[str]
    env: dict[str, str]
    width: int
    process: subprocess.Popen[bytes] | None = None
    began: float = 0.0
    deaths: int = 0
    again_at: float = field(default=0.0)

    def begin(self) -> None:
        bound = [*bound_to_this_process(signal.SIGTERM), *self.command]
        self.began = time.monotonic()
        # In a session of its own: Ctrl-C is for this process alone, which stops its parts in order.
        self.process = subprocess.Popen(
            bound, env=self.env, start_new_session=True, stdout=subprocess.PIPE, stderr=subprocess.STDOUT
        )
        threading.Thread(target=self._pass_on, args=(self.process.stdout,), daemon=True).start()

    def look(self) -> bool:
        """Whether it stands, or will again; False once it died too often."""
        if self.process is None:
            if time.monotonic() >= self.again_at:
                self.begin()
            return True
        if self.process.poll() is None:
            return True
        return self._died(self.process.returncode)

    def _died(self, code: int) -> bool:
        if time.monotonic() - self.began >= STOOD_SECONDS:
            self.deaths = 0
        self.deaths, self.process = self.deaths + 1, None
        if self.deaths >= MOST_DEATHS:
            say(f"{self.name} ended with {code}, {self.deaths} times in a row. GIVING UP; stopping the rest.")
            return False
        pause = min(LONGEST_PAUSE, FIRST_PAUSE * 2 ** (self.deaths - 1))
        say(f"{self.name} ended with {code}; starting it again in {pause:g} s.")
        self.again_at = time.monotonic() + pause
        return True

    def _pass_on(self, lines: IO[bytes]) -> None:
        """Whole lines in one write each, so that two parts never share one."""
        before = f"{self.name:<{self.width}} | ".encode()
        for line in lines:
            sys.stdout.buffer.write(before + line.rstrip(b"\n") + b"\n")
            sys.stdout.buffer.flush()


def say(words: str) -> None:
    print(f"trimops: {words}", flush=True)


def run_together(parts: dict[str, list[str]], env: dict[str, str]) -> int:
    """Run all parts until a stop is asked for or one died too often; the exit code: 0 when asked, else 1."""
    width = max(map(len, parts))
    standing = [Part(name, command, env, width) for name, command in parts.items()]
    try:
        while all(part.look() for part in standing):
            time.sleep(0.2)
        return 1
    except Stopped:
        return 0
    finally:
        for part in reversed(standing):
            if part.process is not None:
                stop(part.process, signal.SIGTERM, seconds=40)


def _stop(asked: int, frame: object) -> None:
    # The stop itself must not be cut short; it ends by force where asking does not help.
    for later in SIGNALS:
        signal.signal(later, signal.SIG_IGN)
    raise Stopped
