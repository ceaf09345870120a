"""A backup made while eight write: nothing committed before it is missing, and the copy is a trimops that works.

In full: tests/bench/backup/bench_backup.py.
"""

import os
import time
from contextlib import contextmanager
from pathlib import Path
from urllib.parse import quote

import pytest
from django.apps import apps
from django.db import connection, connections
from django.db.migrations.recorder import MigrationRecorder

from farms.models import Cow
from tests.bench.invoicing.finished_visits import finished_visits
from tests.trimops.backup.drill import COWS, INVOICES, WRITERS, at_work, losses, said_by_program
from tests.trimops.backup.small_places import KEY, empty_place, opened
from tests.trimops.backup.small_postgres import new_database
from trimops.backup.archive import read_manifest
from trimops.backup.names import BackupState, backups_in
from trimops.backup.place import place_of_postgres, place_of_sqlite
from trimops.backup.postgres_address import PostgresAddress

HERD = int(os.environ.get("TRIMOPS_HERD", "1000"))
IS_FULL = HERD > 1000
VISITS, PAUSE = (400, 0.02) if IS_FULL else (24, 0.1)
SEALED = {"TRIMOPS_BACKUP_KEY": KEY}
PROVEN = (("migrate", "--check"), ("check_papers",))


def note_migrations():
    """Tables that were made straight from the models are those of all migrations: noted as `migrate` would."""
    recorder = MigrationRecorder(connection)
    recorder.ensure_schema()
    for app in apps.get_app_configs():
        for path in Path(app.path, "migrations").glob("[0-9]*.py"):
            recorder.record_applied(app.label, path.stem)


@contextmanager
def lite(folder, monkeypatch):
    """The tables of the test as a file, which is what the program runs on; then the empty place and how to read it."""
    path, data = folder / "data" / "trimops.sqlite3", folder / "data"
    data.mkdir()
    with connection.cursor() as cursor:
        cursor.execute("VACUUM INTO %s", [str(path)])
    monkeypatch.setitem(connections.databases["default"], "NAME", str(path))
    target = empty_place(folder / "new")
    yield (
        place_of_sqlite(path, data),
        target,
        {"DATABASE_URL": "", **SEALED, "TRIMOPS_DATA_DIR": str(folder / "new")},
    )


@contextmanager
def grown_up(folder, monkeypatch):
    (folder / "data").mkdir()
    source = PostgresAddress.of_settings(connection.settings_dict)
    with new_database() as address:
        host = quote(address.parts["host"], safe="")
        url = f"postgres://{address.parts['user']}@{host}/{address.name}"
        target = place_of_postgres(address, folder / "new")
        yield (
            place_of_postgres(source, folder / "data"),
            target,
            {"DATABASE_URL": url, **SEALED, "TRIMOPS_DATA_DIR": str(folder / "new")},
        )


def env_of(place, env):
    """The same for the place that is backed up."""
    env = {**env, "TRIMOPS_DATA_DIR": str(place.folder.path)}
    if place.store.engine == "sqlite":
        return env
    return {**env, "DATABASE_URL": env["DATABASE_URL"].rpartition("/")[0] + "/" + place.store.address.name}


def keys_in(place):
    if place.store.engine == "sqlite":
        with opened(place.store.path) as database:
            return {t: {key for (key,) in database.execute(f"SELECT id FROM {t}")} for t in (COWS, INVOICES)}
    with place.store.address.connect() as database:
        return {t: {key for (key,) in database.execute(f"SELECT id FROM {t}")} for t in (COWS, INVOICES)}


def change_issued(place):
    """What no hand may do: the lock must refuse it in the copy as well."""
    change = f"UPDATE {INVOICES} SET number = 'other' WHERE state = 'issued'"
    if place.store.engine == "sqlite":
        with opened(place.store.path) as database:
            database.execute(change)
    else:
        with place.store.address.connect() as database:
            database.execute(change)


@pytest.mark.django_db(transaction=True)
def test_what_eight_had_committed_before_is_there_and_the_copy_works(tmp_path, monkeypatch, request):
    house, visits = finished_visits(VISITS)
    Cow.objects.bulk_create(
        Cow(business=house.business, farm=house.farm, number=f"H{n}") for n in range(HERD)
    )
    request.addfinalizer(MigrationRecorder(connection).flush)
    note_migrations()
    at_home = lite if connection.vendor == "sqlite" else grown_up
    with at_home(tmp_path, monkeypatch) as (place, target, env):
        with at_work(house, visits, until={COWS: WRITERS, INVOICES: 2}, pause=PAUSE) as work:
            said = said_by_program(env_of(place, env), ("backup", "--to", str(tmp_path / "out")))
            ended = time.time()
        (made,) = backups_in(tmp_path / "out")
        manifest = read_manifest(made.path, KEY)
        restored = said_by_program(env, ("restore", str(made.path), "--into-empty"), *PROVEN)
        began = manifest.made_at.timestamp()
        during = [one for log in work.logs.values() for one in log if began < one[2] < ended]
        print(f"  {said}  {len(during)} commits meanwhile, {work.refused} tries found it locked")
        assert made.state is BackupState.VERIFIED
        assert "each table and file proven to be the same" in restored
        # A copy made of a database at rest would prove nothing.
        assert len(work.logs) == WRITERS
        assert during
        assert losses(work.logs, keys_in(target), began) == []
        with pytest.raises(Exception, match="issued invoice"):
            change_issued(target)


def test_a_loss_would_be_seen():
    logs = {1: [("cow", 1, 10.0), ("cow", 2, 11.0), ("cow", 3, 12.0)]}
    assert losses(logs, {"cow": {1, 2}}, began=11.5) == []
    assert losses(logs, {"cow": {1}}, began=11.5) == ["writer 1 had committed cow 2 before"]
    assert losses(logs, {"cow": {1, 3}}, began=10.5) == ["writer 1 misses a row before one that is there"]
