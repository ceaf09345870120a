"""`make up` and `make serve`: the parts stand side by side, are started again when they die, and end together."""

import json
import os
import signal
import subprocess
import sys
import time

import pytest

from tests.architecture.source_tree import ROOT

# A program like .make/up.py, with parts of our own choosing.
RUNNER = """
import json, os, sys
from parts import as_program, run_together
as_program(lambda: run_together(json.loads(sys.argv[1]), dict(os.environ)))
"""
QUICK = {"TRIMOPS_UP_PAUSE": "0.1", "TRIMOPS_UP_DEATHS": "3", "PYTHONPATH": f"{ROOT}:{ROOT / '.make'}"}


@pytest.fixture
def begin():
    begun = []

    def begin(parts, **more):
        command = [sys.executable, "-c", RUNNER, json.dumps(parts)]
        process = subprocess.Popen(
            command, cwd=ROOT, env={**os.environ, **QUICK, **more}, stdout=subprocess.PIPE, text=True
        )
        begun.append(process)
        return process

    yield begin
    for process in begun:
        process.kill()
        process.communicate()


def python(program):
    return [sys.executable, "-uc", program]


STANDS = python("import time\nprint('here', flush=True)\ntime.sleep(600)")


def lines_until(process, words, seconds=20):
    found, end = [], time.monotonic() + seconds
    while time.monotonic() < end:
        found.append(process.stdout.readline())
        if words in found[-1]:
            return found
    raise AssertionError(f"{words!r} not in {found}")


def test_each_line_bears_the_name_of_its_part_and_no_two_share_one(begin):
    many = python("import sys,time\nfor i in range(200): print('x' * 300)\ntime.sleep(600)")
    process = begin({"web": many, "worker": many})
    lines = [process.stdout.readline() for _ in range(400)]
    assert set(lines) == {f"{name:<6} | {'x' * 300}\n" for name in ("web", "worker")}


def test_a_part_that_dies_is_started_again_and_the_others_stand(begin, tmp_path):
    mark = tmp_path / "died"
    once = python(f"import pathlib,time\np = pathlib.Path({str(mark)!r})\n"
                  "if not p.exists():\n p.touch()\n raise SystemExit(7)\nprint('again')\ntime.sleep(600)")  # fmt: skip
    process = begin({"web": STANDS, "worker": once})
    said = lines_until(process, "worker | again")
    assert "trimops: worker ended with 7; starting it again in 0.1 s.\n" in said
    assert process.poll() is None
    assert sum("web    | here" in line for line in said) <= 1


def test_one_that_dies_again_and_again_ends_it_all_loudly(begin):
    process = begin({"web": STANDS, "beat": python("raise SystemExit(3)")})
    said, _ = process.communicate(timeout=30)
    assert process.returncode == 1
    assert "starting it again in 0.1 s" in said
    assert "starting it again in 0.2 s" in said
    assert "beat ended with 3, 3 times in a row. GIVING UP" in said


def test_one_that_stood_long_enough_begins_to_count_anew(begin):
    dies_later = python("import time\ntime.sleep(0.5)\nraise SystemExit(3)")
    process = begin({"beat": dies_later}, TRIMOPS_UP_STOOD="0.3")
    for _ in range(4):
        assert "starting it again in 0.1 s" in lines_until(process, "ended")[-1]


def test_ctrl_c_stops_all_parts_and_is_no_failure(begin, tmp_path):
    mark = tmp_path / "asked"
    asked = python(f"import pathlib,signal,sys,time\n"
                   f"def end(*_):\n pathlib.Path({str(mark)!r}).touch()\n sys.exit(0)\n"
                   "signal.signal(signal.SIGTERM, end)\nprint('here')\ntime.sleep(600)")  # fmt: skip
    process = begin({"web": asked})
    lines_until(process, "web | here")
    process.send_signal(signal.SIGINT)
    process.communicate(timeout=30)
    assert process.returncode == 0
    assert mark.exists()
