"""Start a server as a child that cannot outlive this process, wait until it answers, stop it."""

import os
import shutil
import signal
import socket
import subprocess
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Protocol


class ServerDidNotStart(RuntimeError):
    """The server ended or stayed silent; the message carries the end of its log."""


class Started(Protocol):
    """What can be asked whether it still runs (None)."""

    args: object

    def poll(self) -> int | None: ...


def free_port() -> int:
    """A TCP port on the loopback that nobody listens on now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


@contextmanager
def running(
    command: Sequence[str],
    *,
    log: Path,
    is_ready: Callable[[], bool],
    stop_by: signal.Signals = signal.SIGTERM,
    user: tuple[int, int] | None = None,
    env: dict[str, str] | None = None,
    cwd: Path | None = None,
) -> Iterator[subprocess.Popen[bytes]]:
    """Run `command` until the block ends; its output goes to `log`; `user` is (uid, gid) to run as."""
    with log.open("ab") as output:
        process = subprocess.Popen(
            [*bound_to_this_process(stop_by, user), *command],
            stdin=subprocess.DEVNULL,
            stdout=output,
            stderr=output,
            env=env,
            cwd=cwd,
            # Ctrl-C is for this process alone: it stops its children in order.
            start_new_session=True,
        )
    try:
        wait_until(is_ready, process, log)
        yield process
    finally:
        stop(process, stop_by)


def bound_to_this_process(stop_by: signal.Signals, user: tuple[int, int] | None = None) -> list[str]:
    """The words before a command that have the kernel send it `stop_by` when this process dies."""
    setpriv = shutil.which("setpriv")
    if setpriv is None:
        return []
    as_user = [f"--reuid={user[0]}", f"--regid={user[1]}", "--clear-groups"] if user else []
    return [setpriv, f"--pdeathsig={stop_by.name.removeprefix('SIG')}", *as_user]


def wait_until(is_ready: Callable[[], bool], process: Started, log: Path, seconds: float = 60) -> None:
    deadline = time.monotonic() + seconds
    while not is_ready():
        if process.poll() is not None or time.monotonic() > deadline:
            said = log.read_text(errors="replace")[-3000:]
            raise ServerDidNotStart(f"{process.args!r} ended with {process.poll()}:\n{said}")
        time.sleep(0.05)


def stop(
    process: subprocess.Popen[bytes], stop_by: signal.Signals = signal.SIGTERM, seconds: float = 20
) -> None:
    """Ask the process to end; after `seconds` end it and all it started."""
    if process.poll() is None:
        process.send_signal(stop_by)
    try:
        process.wait(seconds)
    except subprocess.TimeoutExpired:
        os.killpg(process.pid, signal.SIGKILL)
        process.wait()
