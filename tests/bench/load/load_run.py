"""A day of many businesses against gunicorn on PostgreSQL and Valkey: `python -m tests.bench.load.load_run`.

Two web workers by the configuration that others run (but never replaced, so that what leaks would show), one Celery
worker and beat where asked for, and a bare Django view beside them under the same load. A few businesses have their day
in a minute before the rest: the papers come at the end of a day, and what a process loads for its first ones (fonts,
XML schemas) is no growth. It prints JSON and ends with 1 where an answer was wrong.
"""

import json
import os
import sys
import tempfile
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator, Mapping
from contextlib import ExitStack, contextmanager
from dataclasses import asdict
from datetime import UTC, datetime
from functools import partial
from pathlib import Path
from random import Random
from urllib.error import URLError
from urllib.request import urlopen

import django

from tests.services.postgres import postgres, server_account
from tests.services.processes import free_port, running
from tests.services.valkey import valkey

ROOT = Path(__file__).resolve().parents[3]
PHOTO_BYTES = 60_000
WARMING_EACH, WARMING_PART = 25, 0.05
"""For so many businesses there is one more, whose day comes before the watch begins, in this part of the time."""
GUNICORN = [sys.executable, "-m", "gunicorn", "--config", ".make/gunicorn.conf.py", "--max-requests", "0"]


def main(asked: Namespace) -> int:
    with tempfile.TemporaryDirectory(prefix="trimops-load-") as name, ExitStack() as servers:
        folder = Path(name)
        folder.chmod(0o755)
        data = server_account().owns(folder / "pg")
        database = servers.enter_context(postgres(data, is_quick=asked.quick))
        broker = servers.enter_context(valkey(folder / "valkey", is_kept=False))
        os.environ |= {
            "DATABASE_URL": database,
            "REDIS_URL": broker,
            "DJANGO_SETTINGS_MODULE": "trimops.settings.base",
            "TRIMOPS_DATA_DIR": str(folder / "data"),
            "TRIMOPS_SECRET_KEY": "a-trial-of-load-0123456789-abcdefghijklmnopqrstuvwxyz",
            "PYTHONPATH": str(ROOT),
            "WEB_WORKERS": "2",
        }
        told = _run(asked, folder, servers)
    print(json.dumps(told, indent=1))
    return 1 if told["wrong"] else 0


def _run(asked: Namespace, folder: Path, servers: ExitStack) -> dict[str, object]:
    django.setup()
    from tests.bench.load.built_houses import build_all, make_load_tables  # noqa: PLC0415
    from tests.bench.load.day_calls import day_of  # noqa: PLC0415
    from tests.bench.load.memory import Watched, children_of  # noqa: PLC0415
    from tests.bench.load.replay import Replay  # noqa: PLC0415
    from tests.bench.visits.crush_day import noise_of  # noqa: PLC0415

    make_load_tables()
    count = asked.businesses // WARMING_EACH
    houses = build_all(asked.businesses + count, datetime.now(UTC), _say)
    django.db.connections.close_all()
    picture = noise_of(PHOTO_BYTES, Random(4))
    warming = [person for house in houses[:count] for person in day_of(house, picture)]
    people = [person for house in houses[count:] for person in day_of(house, picture)]
    web, port = servers.enter_context(served("trimops.wsgi", folder / "web.log", "/health/live/"))
    at = f"/business/{houses[0].business}/"
    bare = servers.enter_context(served("tests.bench.load.bare_wsgi", folder / "bare.log", at))[1]
    if asked.worker:
        servers.enter_context(_worker(folder))
    first = Replay(port, (bare, houses[0].business), warming, asked.seconds * WARMING_PART).run(asked.hands)
    calls = sum(map(len, people))
    _say(f"{calls} calls of {len(people)} people in {asked.seconds:.0f} s")
    watched = Watched(children_of(web), every=max(0.2, asked.seconds / 240))
    load_before = os.getloadavg()
    heard = Replay(port, (bare, houses[0].business), people, asked.seconds).run(asked.hands)
    memory = watched.stop()
    heard.wrong += first.wrong
    told = told_of(heard)
    told |= {"machine_load": [round(each, 1) for each in (*load_before, *os.getloadavg())]}
    told |= {
        "calls_asked": calls,
        "cores": os.cpu_count(),
        "businesses": asked.businesses,
        "seconds": asked.seconds,
    }
    told["memory_mb"] = [{**asdict(each), "ratio": each.ratio} for each in memory.values()]
    if heard.wrong and asked.keep_log:
        Path(asked.keep_log).write_text((folder / "web.log").read_text(errors="replace"))
    return told


def told_of(heard: object) -> dict[str, object]:
    """Milliseconds by kind, in all but the bare view, and how many times the bare view's p95 that is."""
    from tests.bench.load.replay import BARE, Heard  # noqa: PLC0415

    assert isinstance(heard, Heard)
    ours = {kind: spent for kind, spent in heard.seconds.items() if kind != BARE}
    every = [each for spent in ours.values() for each in spent]
    rows: Mapping[str, dict[str, object]] = {
        kind: {**_figures(spent), "share": round(len(spent) / len(every), 4)}
        for kind, spent in sorted(ours.items())
    }
    bare = _figures(heard.seconds.get(BARE, [0.0]))
    whole = _figures(every)
    return {
        "kinds": rows,
        "all": whole,
        "bare": bare,
        "p95_to_bare": round(whole["p95_ms"] / max(bare["p95_ms"], 0.01), 1),
        "late_p95_ms": _figures(heard.late)["p95_ms"],
        "statuses": dict(sorted(heard.statuses.items())),
        "wrong": heard.wrong[:20],
        "wrong_count": len(heard.wrong),
    }


def _figures(seconds: list[float]) -> dict[str, float]:
    rows = sorted(seconds)

    def at(part: float) -> float:
        return round(1000 * rows[min(len(rows) - 1, int(part * len(rows)))], 1)

    return {"calls": len(rows), "p50_ms": at(0.5), "p95_ms": at(0.95), "max_ms": at(1)}


@contextmanager
def served(what: str, log: Path, ready: str) -> Iterator[tuple[int, int]]:
    """(process id of the master, port)."""
    port = free_port()
    address = f"http://127.0.0.1:{port}{ready}"
    env = {**os.environ, "PORT": str(port)}
    command = [*GUNICORN, what]
    with running(command, log=log, is_ready=partial(_answers, address), env=env, cwd=ROOT) as process:
        yield process.pid, port


def _answers(address: str) -> bool:
    try:
        with urlopen(address, timeout=30) as answer:
            return bool(answer.status == 200)
    except (URLError, OSError):
        return False


@contextmanager
def _worker(folder: Path) -> Iterator[None]:
    celery = [sys.executable, "-m", "celery", "--app", "trimops"]
    worker = [*celery, "worker", "--concurrency", "1", "--loglevel", "WARNING", "--without-gossip"]
    beat = [*celery, "beat", "--loglevel", "WARNING", "--schedule", str(folder / "beat")]
    with (
        running(worker, log=folder / "worker.log", is_ready=lambda: True, cwd=ROOT),
        running(beat, log=folder / "beat.log", is_ready=lambda: True, cwd=ROOT),
    ):
        yield


def _say(words: str) -> None:
    print(words, file=sys.stderr, flush=True)


def parser() -> ArgumentParser:
    words = ArgumentParser()
    words.add_argument("--businesses", type=int, default=200)
    words.add_argument("--seconds", type=float, default=1200)
    words.add_argument("--hands", type=int, default=8)
    words.add_argument(
        "--worker", action="store_true", help="a Celery worker and beat beside the web workers"
    )
    words.add_argument("--quick", action="store_true", help="a database that may lose what a crash takes")
    words.add_argument("--keep-log", default="")
    return words


if __name__ == "__main__":
    sys.exit(main(parser().parse_args()))
