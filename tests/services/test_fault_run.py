"""The small form of the run under faults; `make bench` runs the full one (tests/bench/running/bench_faults.py)."""

import json
import os
import subprocess
import sys

import pytest
from django.conf import settings

# It has servers of its own; the mark of the database has it chosen for the run on servers.
pytestmark = [pytest.mark.services, pytest.mark.django_db]


def test_what_was_killed_is_done_once_all_the_same():
    asked = ["--businesses", "2", "--kills", "3", "--broker", "1", "--database", "1", "--between", "2"]
    command = [sys.executable, "-m", "tests.services.fault_run", *asked]
    env = {name: value for name, value in os.environ.items() if name not in ("DATABASE_URL", "REDIS_URL")}
    ended = subprocess.run(
        command, cwd=settings.BASE_DIR, env=env, capture_output=True, text=True, check=False
    )
    print(ended.stdout)
    assert ended.returncode == 0, f"{ended.stdout[-3000:]}\n{ended.stderr[-3000:]}"
    outcome = json.loads(ended.stdout)
    assert (outcome["kills"], outcome["broker_restarts"], outcome["database_crashes"]) == (3, 1, 1)
    assert outcome["counts"]["reports issued"] == outcome["counts"]["invoices issued"] == 4
