"""Servers that a trial may kill and start again where they were: PostgreSQL, Valkey, Celery's worker and beat."""

import os
import random
import signal
import subprocess
import sys
import time
from contextlib import ExitStack
from functools import partial
from pathlib import Path
from urllib.parse import quote

from tests.services import postgres as pg
from tests.services import valkey as vk
from tests.services.processes import bound_to_this_process, free_port, running, stop

ROOT = Path(__file__).resolve().parents[2]


class Database:
    """A PostgreSQL on one socket; `crash` ends it at once and starts it again on the same data."""

    def __init__(self, folder: Path) -> None:
        os.chmod(folder, 0o755)
        self._account = pg.server_account()
        self._programs = pg.programs_for(self._account, folder / "programs")
        self._data, self._sockets = folder / "pg", self._account.owns(folder / "s")
        self._log = folder / "postgres.log"
        pg.make_cluster(self._programs, self._account, self._data)
        self._running = ExitStack()
        self.start()
        pg.make_database(self._programs, self._sockets)
        self.url = f"postgres://postgres@{quote(str(self._sockets), safe='')}/{pg.DATABASE}"

    def start(self) -> None:
        program = [str(self._programs / "postgres"), "-D", str(self._data), "-k", str(self._sockets)]
        self._process = self._running.enter_context(
            running(
                [*program, "-c", "listen_addresses=", *pg.QUICK],
                log=self._log,
                is_ready=partial(pg.answers, self._programs, self._sockets),
                stop_by=signal.SIGINT,
                user=self._account.user,
                cwd=Path("/"),
            )
        )

    def crash(self, away_seconds: float) -> None:
        """Without a goodbye to anybody (SIGQUIT: an immediate shutdown, so it recovers from its log)."""
        stop(self._process, signal.SIGQUIT)
        self._running.close()
        time.sleep(away_seconds)
        self.start()

    def stop(self) -> None:
        self._running.close()


class Broker:
    """A Valkey on one port; `restart` with what it holds, or empty."""

    def __init__(self, folder: Path) -> None:
        folder.mkdir()
        self._folder, self._port = folder, free_port()
        self.url = f"redis://127.0.0.1:{self._port}/0"
        self._running = ExitStack()
        self.start()

    def start(self) -> None:
        command = [str(vk.program()), "--bind", "127.0.0.1", "--port", str(self._port)]
        kept = ["--dir", str(self._folder), "--appendonly", "yes", "--save", "", "--databases", "16"]
        self._process = self._running.enter_context(
            running(
                [*command, *kept, "--maxmemory-policy", "noeviction"],
                log=self._folder.with_suffix(".log"),
                is_ready=partial(vk.answers, f"redis://127.0.0.1:{self._port}"),
            )
        )

    def restart(self, *, keeps_data: bool, away_seconds: float) -> None:
        stop(self._process, signal.SIGTERM if keeps_data else signal.SIGKILL)
        self._running.close()
        if not keeps_data:
            for kept in self._folder.rglob("*"):
                if kept.is_file():
                    kept.unlink()
        time.sleep(away_seconds)
        self.start()

    def stop(self) -> None:
        self._running.close()


class Workers:
    """Celery workers and a beat that are killed by force and started again."""

    def __init__(self, folder: Path, count: int, env: dict[str, str]) -> None:
        self._folder, self._env, self.killed = folder, env, 0
        self._processes: dict[str, subprocess.Popen[bytes]] = {}
        self._names = [*(f"worker-{number}" for number in range(count)), "beat"]
        self.keep_up()

    def keep_up(self) -> None:
        """Start what does not run."""
        for name in self._names:
            process = self._processes.get(name)
            if process is None or process.poll() is not None:
                self._processes[name] = self._start(name)

    def kill_one(self, chance: random.Random) -> None:
        """Whole process groups, children too; or now and then one child alone, whose worker lives on."""
        name = chance.choice([*self._names[:-1], *self._names])
        process = self._processes[name]
        children = _children(process.pid)
        if children and chance.random() < 0.6:
            os.kill(chance.choice(children), signal.SIGKILL)
        else:
            os.killpg(process.pid, signal.SIGKILL)
            process.wait()
        self.killed += 1

    def stop(self) -> None:
        for process in self._processes.values():
            stop(process, signal.SIGTERM, seconds=10)

    def said(self) -> str:
        return "\n".join(path.read_text(errors="replace") for path in sorted(self._folder.glob("*.log")))

    def _start(self, name: str) -> subprocess.Popen[bytes]:
        celery = [sys.executable, "-m", "celery", "--app", "trimops"]
        if name == "beat":
            command = [*celery, "beat", "--loglevel", "WARNING", "--schedule", str(self._folder / "beat")]
        else:
            kind = ["--concurrency", "1", "--without-gossip", "--without-mingle", "--loglevel", "INFO"]
            command = [*celery, "worker", "--hostname", f"{name}@localhost", *kind]
        with (self._folder / f"{name}.log").open("ab") as output:
            return subprocess.Popen(
                [*bound_to_this_process(signal.SIGKILL), *command],
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=output,
                env=self._env,
                cwd=ROOT,
                start_new_session=True,
            )


def _children(process_id: int) -> list[int]:
    try:
        listed = Path(f"/proc/{process_id}/task/{process_id}/children").read_text()
    except OSError:
        return []
    return [int(word) for word in listed.split()]
