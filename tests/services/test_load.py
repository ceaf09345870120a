"""The small form of a day under load, of which no time is judged; bench_load.py in tests/bench/load is the full one."""

import json
import os
import subprocess
import sys

import pytest
from django.conf import settings

# It has servers of its own; the mark of the database has it chosen for the run on servers.
pytestmark = [pytest.mark.services, pytest.mark.django_db]


def test_the_day_of_two_businesses_is_answered_without_an_error():
    asked = ["--businesses", "2", "--seconds", "12", "--hands", "4", "--quick"]
    command = [sys.executable, "-m", "tests.bench.load.load_run", *asked]
    env = {name: value for name, value in os.environ.items() if name not in ("DATABASE_URL", "REDIS_URL")}
    ended = subprocess.run(
        command, cwd=settings.BASE_DIR, env=env, capture_output=True, text=True, check=False
    )
    assert ended.returncode == 0, f"{ended.stdout[-3000:]}\n{ended.stderr[-3000:]}"
    told = json.loads(ended.stdout)
    assert told["wrong_count"] == 0
    assert told["kinds"]["crush writings"]["calls"] == 20
    assert told["kinds"]["issue"]["calls"] == told["kinds"]["draft"]["calls"] == 2
    assert told["all"]["calls"] == told["calls_asked"]
    assert {int(status) for status in told["statuses"]} <= {200, 201, 302, 304}
