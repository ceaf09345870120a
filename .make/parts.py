"""Run the parts of a stack side by side in one foreground process, and stop them together."""

import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterable
from typing import NoReturn

from tests.services.processes import bound_to_this_process, stop

SIGNALS = (signal.SIGINT, signal.SIGTERM, signal.SIGHUP)


class Stopped(BaseException):
    """Ctrl-C, or the machine asks this process to end."""


def web_server(port: str, *options: str) -> list[str]:
    """The command of the web server; only this machine can reach it."""
    at = ["--bind", f"127.0.0.1:{port}", "--no-control-socket"]
    return [sys.executable, "-m", "gunicorn", "trimops.wsgi", *at, *options]


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


def run_together(parts: dict[str, list[str]], env: dict[str, str]) -> int:
    """Run all parts until one ends or a stop is asked for; the exit code: 0 when asked, else 1."""
    started: dict[str, subprocess.Popen[bytes]] = {}
    try:
        for name, command in parts.items():
            bound = [*bound_to_this_process(signal.SIGTERM), *command]
            started[name] = subprocess.Popen(bound, env=env, start_new_session=True)
        ended = _first_to_end(started)
        print(f"trimops: {ended} ended with {started[ended].returncode}; stopping the rest.", flush=True)
        return 1
    except Stopped:
        return 0
    finally:
        _stop_all(reversed(started.values()))


def _first_to_end(started: dict[str, subprocess.Popen[bytes]]) -> str:
    while True:
        for name, process in started.items():
            if process.poll() is not None:
                return name
        time.sleep(0.2)


def _stop_all(processes: Iterable[subprocess.Popen[bytes]]) -> None:
    for process in processes:
        stop(process, signal.SIGTERM)


def _stop(asked: int, frame: object) -> None:
    # The stop itself must not be cut short; it ends by force where asking does not help.
    for later in SIGNALS:
        signal.signal(later, signal.SIG_IGN)
    raise Stopped
