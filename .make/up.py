"""`make up`: the full stack (web, worker, beat) on PostgreSQL and Redis in one foreground process.

DATABASE_URL and REDIS_URL name the servers; where one is not set, a server of its own runs for as long as
this does, with its data kept in .services/.
"""

import hashlib
import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory

from parts import as_program, run_together, web_server

from tests.services.postgres import postgres, server_account
from tests.services.valkey import valkey

ROOT = Path(__file__).resolve().parent.parent
PORT = os.environ["PORT"]
WORKERS = os.environ.get("TASK_WORKERS", "2")


def main() -> int:
    kept = _kept_data()
    with _database(kept / "postgres") as database, _broker(kept / "valkey") as broker:
        env = {**os.environ, "DATABASE_URL": database, "REDIS_URL": broker, "PYTHONUNBUFFERED": "1"}
        env.setdefault("DJANGO_SETTINGS_MODULE", "trimops.settings.base")
        env.setdefault("TRIMOPS_SITE", f"http://127.0.0.1:{PORT}")
        env.setdefault("TRIMOPS_COLLECTED", "1")
        manage = [sys.executable, "manage.py"]
        subprocess.run([*manage, "migrate", "--verbosity", "0"], check=True, env=env)
        subprocess.run([*manage, "collectstatic", "--noinput", "--verbosity", "0"], check=True, env=env)
        with TemporaryDirectory(prefix="trimops-figures-") as figures:
            # Web and worker count together; what an earlier run counted is gone.
            env.setdefault("PROMETHEUS_MULTIPROC_DIR", figures)
            return _stand(kept, env)


def _stand(kept: Path, env: dict[str, str]) -> int:
    # A server that was named to us may have a password in its address: that is not written to a terminal.
    own = " ".join(
        f"{each}='{env[each]}'" for each in ("DATABASE_URL", "REDIS_URL") if each not in os.environ
    )
    print(f"trimops: for the demo business, in a second terminal: {own} {sys.executable} manage.py demo")
    print(f"trimops: open http://127.0.0.1:{PORT}/   (Ctrl-C stops it all)", flush=True)
    return run_together(_parts(kept), env)


def _parts(kept: Path) -> dict[str, list[str]]:
    celery = [sys.executable, "-m", "celery", "--app", "trimops"]
    return {
        "worker": [*celery, "worker", "--loglevel", "INFO", "--concurrency", WORKERS],
        # Beside it, so that the watch and the timetable never stand behind two long plannings.
        "urgent": [
            *(*celery, "worker", "--loglevel", "INFO", "--concurrency", "1", "--queues", "urgent"),
            *("--hostname", "urgent@%h"),
        ],
        "beat": [*celery, "beat", "--loglevel", "INFO", "--schedule", str(kept / "beat")],
        "web": web_server(),
    }


def _kept_data() -> Path:
    """.services/, or a folder under /var/lib where the database's unprivileged user cannot reach this one."""
    account = server_account()
    try:
        account.run(["test", "-x", str(ROOT)])
        folder = ROOT / ".services"
    except subprocess.CalledProcessError:
        folder = Path("/var/lib") / f"trimops-services-{hashlib.sha256(bytes(ROOT)).hexdigest()[:8]}"
        print(f"trimops: {ROOT} is closed to the database's user; its data is kept in {folder}")
    folder.mkdir(exist_ok=True, mode=0o755)
    return folder


@contextmanager
def _database(data: Path) -> Iterator[str]:
    if given := os.environ.get("DATABASE_URL"):
        yield given
        return
    with postgres(data, is_quick=False) as url:
        yield url


@contextmanager
def _broker(data: Path) -> Iterator[str]:
    if given := os.environ.get("REDIS_URL"):
        yield given
        return
    with valkey(data, is_kept=True) as url:
        yield url


if __name__ == "__main__":
    as_program(main)
