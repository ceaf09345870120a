"""The library in a process of its own Python (its wheel is for 3.12 and newer) says what the server says."""

import json
import os
import shutil
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

from tests.roads.small_network import ISLAND
from tests.services.osrm import ROOT, engine_home
from visits.roads.roads_server import roads_server

pytestmark = pytest.mark.roads
NEW_ENOUGH = "import sys; sys.exit(sys.version_info < (3, 12))"
FAR_AWAY = (56.0, -4.0)


@cache
def python_for_the_library() -> str | None:
    """This Python where it is new enough, else one that the machine has besides."""
    names = [shutil.which(f"python3.{minor}") for minor in (12, 13, 14)]
    beside = sorted(Path.home().glob(".pyenv/versions/3.1[2-9]*/bin/python3"))
    for program in [sys.executable, *names, *map(str, beside)]:
        if (
            program
            and subprocess.run([program, "-c", NEW_ENOUGH], capture_output=True, check=False).returncode == 0
        ):
            return program
    return None


def asked_locally(extract, points):
    program = python_for_the_library()
    if program is None:
        pytest.skip(
            "NO PYTHON 3.12 OR NEWER HERE: the road map in the process has no wheel and is not tested"
        )
    env = {**os.environ, "PYTHONPATH": f"{ROOT}:{engine_home()}"}
    command = [program, str(Path(__file__).with_name("ask_local_engine.py")), str(extract)]
    done = subprocess.run(
        command, input=json.dumps(points), env=env, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


def test_the_map_in_the_process_says_what_the_server_over_the_same_map_says(network, extract, roads_address):
    points = [*network.nodes[::5], ISLAND]
    said = asked_locally(extract, points)
    table = roads_server(roads_address).table(points, points, 5)
    assert said["rows"] == [[leg and [leg.seconds, leg.metres] for leg in row] for row in table]
    assert any(leg is None for row in said["rows"] for leg in row)
    assert said["source"] == "local"


def test_a_place_off_the_map_loses_its_own_drives_and_no_others(network, extract):
    rows = asked_locally(extract, [network.nodes[0], FAR_AWAY, network.nodes[40]])["rows"]
    assert rows[0][2][1] > 1000
    assert rows[0][1] is None
    assert set(rows[1]) == {None}
