"""A database of the last release, taken to the newest tables: every row and value is there, the pages open.

The database is the one in fixtures/upgrade; `python -m tests.upgrade.keep_rows` in a release's tree makes it anew.
"""

import gzip
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from django.apps import apps
from django.db import connection

from tests.architecture.source_tree import ROOT
from tests.upgrade.compare import lost, not_allowed

FOLDER = ROOT / "fixtures" / "upgrade"
TOLD = json.loads((FOLDER / "from.json").read_text())
OPENS = {200, 302, 405}


def walk(**more):
    """In a process and a database of its own: the tests' database never moves."""
    env = {name: value for name, value in os.environ.items() if name not in ("DATABASE_URL", "REDIS_URL")}
    command = [sys.executable, "-m", "tests.upgrade.walk"]
    done = subprocess.run(command, cwd=ROOT, env={**env, **more}, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr[-3000:]
    return json.loads(done.stdout.splitlines()[-1])


@pytest.fixture(scope="module")
def walked(tmp_path_factory):
    return walk(TRIMOPS_DATA_DIR=str(tmp_path_factory.mktemp("upgrade")))


def test_no_row_and_no_value_is_lost(walked):
    assert walked["rows"] > 200
    assert not_allowed(walked["lost"], TOLD["allowed"]) == []


def test_the_issued_papers_are_as_they_were_and_no_migration_waits(walked):
    assert walked["papers"] == "Every issued paper is as it was issued, and no number is missing."
    assert walked["ready"] == ""


def test_every_page_of_its_rows_opens(walked):
    assert len(walked["answers"]) > 150
    assert {name: status for name, status in walked["answers"].items() if status not in OPENS} == {}


@pytest.mark.services
@pytest.mark.django_db
def test_nothing_is_lost_on_postgres_either(tmp_path):
    name = f"trimops_upgrade_{os.getpid()}"
    _on_server(f'CREATE DATABASE "{name}"')
    try:
        address = os.environ["DATABASE_URL"].rsplit("/", 1)[0]
        walked = walk(TRIMOPS_DATA_DIR=str(tmp_path), DATABASE_URL=f"{address}/{name}")
    finally:
        _on_server(f'DROP DATABASE "{name}"')
    assert not_allowed(walked["lost"], TOLD["allowed"]) == []
    assert walked["papers"] == "Every issued paper is as it was issued, and no number is missing."
    assert {name: status for name, status in walked["answers"].items() if status not in OPENS} == {}


def _on_server(statement):
    """Outside every transaction, on the server's own database: the tests' one may be made later or be in use."""
    with connection._nodb_cursor() as cursor:
        cursor.execute(statement)


def test_the_release_that_was_kept_is_one_that_this_program_came_from():
    missing = [
        (app, name)
        for app, name in TOLD["migrations"].items()
        if not (Path(apps.get_app_config(app).path) / "migrations" / f"{name}.py").exists()
    ]
    assert missing == []
    assert len((FOLDER / "rows.json.gz").read_bytes()) < 300_000
    assert len(json.loads(gzip.decompress((FOLDER / "rows.json.gz").read_bytes()))) > 50


BEFORE = {"farm": {"id": {"1": "a", "2": "b"}, "name": {"1": "c", "2": "d"}}, "empty": {"id": {}}}


@pytest.mark.parametrize(
    ("after", "said"),
    [
        (BEFORE, []),
        ({"farm": {**BEFORE["farm"], "more": {"1": "x", "2": "y"}}}, []),
        ({"farm": {each: {**values, "3": "z"} for each, values in BEFORE["farm"].items()}}, []),
        ({}, ["farm"]),
        ({"farm": {"id": {"1": "a", "2": "b"}}}, ["farm.name"]),
        ({"farm": {"id": {"1": "a"}, "name": {"1": "c"}}}, ["farm: rows 2"]),
        (
            {"farm": {"id": {"1": "a", "2": "b"}, "name": {"1": "c", "2": "x"}}},
            ["farm.name: changed in rows 2"],
        ),
    ],
)
def test_whatever_is_lost_is_named(after, said):
    assert list(lost(BEFORE, after, {})) == said


NEWER = {"letter": {"id": {"7": "q"}, "title": {"7": "c"}}}


def test_a_column_that_moved_must_have_arrived_with_each_of_its_values():
    there = {"farm": {"id": {"1": "a", "2": "b"}}, **NEWER}
    found = lost(BEFORE, there, {"farm.name": "letter.title"})
    assert list(found) == ["farm.name: not at letter.title from rows 2"]
    arrived = {**there, "letter": {"id": {"7": "q", "8": "r"}, "title": {"7": "c", "8": "d"}}}
    assert list(lost(BEFORE, arrived, {"farm.name": "letter.title"})) == []


def test_of_a_table_that_went_each_column_says_where_to():
    gone = lost(BEFORE, {"letter": {"title": {"1": "c", "2": "d"}}}, {"farm.name": "letter.title"})
    assert list(gone) == ["farm.id"]


def test_only_what_has_its_reason_may_go():
    assert not_allowed(["farm.name", "farm: rows 2"], {"farm.name": "it moved to ..."}) == ["farm: rows 2"]
