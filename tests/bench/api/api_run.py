"""Every operation of the API against gunicorn on PostgreSQL and Valkey: `python -m tests.bench.api.api_run`.

Two web workers by the configuration that others run, asked over a socket by schemathesis with all its checks (see
tests/standards/api). What a call did stays done, so each operation is asked of a furnished business of its own, and
of a new one after every so many calls. All operations are asked in rounds, so that a run that is cut short has asked
as many of them as it could. It prints JSON.
"""

import json
import os
import sys
import tempfile
import time
from argparse import ArgumentParser, Namespace
from contextlib import ExitStack
from pathlib import Path
from random import Random

import django

from tests.bench.load.load_run import served
from tests.services.postgres import postgres, server_account
from tests.services.valkey import valkey

ROOT = Path(__file__).resolve().parents[3]
NO_LIMITS = dict.fromkeys(
    (
        *("TRIMOPS_API_RATE", "TRIMOPS_API_STRANGER_RATE", "TRIMOPS_PAGE_RATE"),
        *("TRIMOPS_COSTLY_RATE", "TRIMOPS_WRONG_LINKS_RATE"),
    ),
    "0",
)


def main(asked: Namespace) -> int:
    with tempfile.TemporaryDirectory(prefix="trimops-api-") as name, ExitStack() as servers:
        folder = Path(name)
        folder.chmod(0o755)
        data = server_account().owns(folder / "pg")
        os.environ |= NO_LIMITS | {
            "DATABASE_URL": servers.enter_context(postgres(data, is_quick=True)),
            "REDIS_URL": servers.enter_context(valkey(folder / "valkey", is_kept=False)),
            "DJANGO_SETTINGS_MODULE": "trimops.settings.base",
            "TRIMOPS_DATA_DIR": str(folder / "data"),
            "TRIMOPS_SECRET_KEY": "a-trial-of-the-api-0123456789-abcdefghijklmnopqrstuvwxyz",
            "PYTHONPATH": str(ROOT),
            "WEB_WORKERS": "2",
        }
        django.setup()
        told = _run(asked, folder, servers)
        if asked.keep_log:
            Path(asked.keep_log).write_text((folder / "web.log").read_text(errors="replace"))
    print(json.dumps(told, indent=1))
    return 1 if told["faults"] else 0


def _run(asked: Namespace, folder: Path, servers: ExitStack) -> dict[str, object]:
    from tests.bench.api.asked_in_rounds import Rounds  # noqa: PLC0415
    from tests.bench.load.built_houses import make_load_tables  # noqa: PLC0415
    from tests.standards.api.described import names  # noqa: PLC0415

    make_load_tables()
    port = servers.enter_context(served("trimops.wsgi", folder / "web.log", "/health/live/"))[1]
    chosen = [name for name in names() if not asked.only or name in asked.only.split(",")]
    rounds = Rounds(f"http://localhost:{port}", chosen, Random(asked.seed), asked.fresh)
    began = time.monotonic()
    told = rounds.ask(asked.examples, until=began + asked.seconds if asked.seconds else None)
    return told_of(told, time.monotonic() - began) | {"examples": asked.examples, "cores": os.cpu_count()}


def told_of(told: dict, seconds: float) -> dict[str, object]:
    """What came of all: how often each status, faults by operation, which operations never succeeded."""
    statuses: dict[str, int] = {}
    for each in told.values():
        for status, count in each.statuses.items():
            statuses[str(status)] = statuses.get(str(status), 0) + count
    calls = sum(statuses.values())
    never = [name for name, each in told.items() if not any(200 <= code < 300 for code in each.statuses)]
    return {
        "operations": len(told),
        "calls": calls,
        "least_calls": min((each.statuses.total() for each in told.values()), default=0),
        "calls_a_second": round(calls / max(seconds, 0.001), 1),
        "seconds": round(seconds),
        "statuses": dict(sorted(statuses.items())),
        "succeeded": round((len(told) - len(never)) / max(len(told), 1), 4),
        "never_succeeded": never,
        "faults": {name: each.faults for name, each in told.items() if each.faults},
    }


def parser() -> ArgumentParser:
    words = ArgumentParser()
    words.add_argument("--examples", type=int, default=1000, help="calls of each operation")
    words.add_argument("--seconds", type=float, default=0, help="no more is begun after so long; 0: no end")
    words.add_argument("--only", default="", help="operations, comma between")
    words.add_argument("--fresh", type=int, default=250, help="calls of one operation to one business")
    words.add_argument("--seed", type=int, default=9)
    words.add_argument("--keep-log", default="", help="a file for what the web workers said")
    return words


if __name__ == "__main__":
    sys.exit(main(parser().parse_args()))
