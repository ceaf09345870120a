"""The same on a real PostgreSQL: taken down in one snapshot, tried out beside it, restored into an empty database."""

from pathlib import Path

import psycopg
import pytest

from tests.trimops.backup.small_places import AT, KEY, empty_place, filled_place
from tests.trimops.backup.small_postgres import LAID, databases, new_database, run_in
from trimops.backup.contents import differences
from trimops.backup.errors import BackupProblem, FaultyBackup, NotEmpty, NotVerified
from trimops.backup.make_backup import make_backup
from trimops.backup.names import BackupState, backups_in
from trimops.backup.place import Place, place_of_postgres
from trimops.backup.postgres_address import PostgresAddress
from trimops.backup.postgres_store import TRY_OUT, PostgresStore
from trimops.backup.restore_backup import restore_backup

# The databases are its own; the second mark has `make test-servers` choose it.
pytestmark = [pytest.mark.services, pytest.mark.django_db]


@pytest.fixture
def place(tmp_path):
    (tmp_path / "data").mkdir()
    (tmp_path / "data" / "secret-key").write_text("signs")
    with new_database(LAID) as address:
        yield place_of_postgres(address, tmp_path / "data")


@pytest.fixture
def empty(tmp_path):
    with new_database() as address:
        yield place_of_postgres(address, tmp_path / "new")


def make(place, tmp_path, **changes):
    return make_backup(**{"place": place, "to": tmp_path / "out", "at": AT, "program": "0.1.0", **changes})


@pytest.mark.parametrize("key", [None, KEY])
def test_it_is_all_there_again_and_the_database_of_the_trial_is_gone(place, empty, tmp_path, key):
    made = make(place, tmp_path, key=key)
    told = made.manifest.contents
    assert made.state is BackupState.VERIFIED
    assert {name: table.rows for name, table in told.tables.items()} == {
        "farm": 2,
        "cow": 20,
        "sign_in": 4,
        "django_migrations": 1,
    }
    assert told.migrations == ["farms.0001_initial"]
    assert "trigger cow_stays on cow" in told.objects
    assert {"function cow_stays", "constraint farm_named on farm", "constraint cow_tag_key on cow"} <= set(
        told.objects
    )
    restore_backup(file=made.path, place=empty, key=key)
    assert differences(place.store.contents(), empty.store.contents()) == []
    assert (empty.folder.path / "secret-key").read_text() == "signs"
    assert not [name for name in databases() if name.startswith(TRY_OUT)]


def test_its_triggers_refuse_and_its_numbers_go_on(place, empty, tmp_path):
    restore_backup(file=make(place, tmp_path).path, place=empty)
    with pytest.raises(psycopg.errors.CheckViolation, match="it stays"):
        run_in(empty.store.address, "UPDATE cow SET tag = 'other' WHERE id = 1")
    with empty.store.address.connect() as connection:
        row = connection.execute("INSERT INTO cow (farm_id, tag) VALUES (1, 'new') RETURNING id").fetchone()
    assert row == (21,)
    with pytest.raises(psycopg.errors.ForeignKeyViolation):
        run_in(empty.store.address, "INSERT INTO cow (farm_id) VALUES (99)")


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ("DELETE FROM cow WHERE id = 7", "table cow has 19 rows, not 20"),
        ("UPDATE farm SET price = 12.51 WHERE id = 1", "table farm has other rows, as many"),
        ("UPDATE farm SET share = 0.1::real WHERE id = 1", "table farm has other rows, as many"),
        ("DROP TRIGGER cow_stays ON cow", "trigger cow_stays on cow is missing"),
        ("ALTER TABLE farm DROP CONSTRAINT farm_named", "constraint farm_named on farm is missing"),
        ("ALTER TABLE cow DROP CONSTRAINT cow_tag_key", "constraint cow_tag_key on cow is missing"),
        ("DROP TABLE sign_in", "table sign_in is missing"),
    ],
)
def test_every_change_shows(place, change, words):
    before = place.store.contents()
    run_in(place.store.address, change)
    assert words in differences(before, place.store.contents())


def test_what_the_session_speaks_makes_no_difference(place):
    before = place.store.contents()
    name = place.store.address.name
    for setting in ("TimeZone = 'Asia/Tokyo'", "DateStyle = 'German'", "IntervalStyle = 'iso_8601'"):
        run_in(place.store.address, f"ALTER DATABASE {name} SET {setting}")
    assert differences(before, place.store.contents()) == []


def test_a_database_with_tables_is_left_alone(place, empty, tmp_path):
    made = make(place, tmp_path)
    run_in(empty.store.address, "CREATE TABLE cow (id integer)")
    with pytest.raises(NotEmpty, match=r"holds 1 tables already \(cow"):
        restore_backup(file=made.path, place=empty)


class TamperedStore(PostgresStore):
    """A disk that loses a row between the snapshot and what is told of it."""

    def take(self, dump: Path):
        super().take(dump)
        run_in(self.address, "DELETE FROM cow WHERE id = 7")
        return self.contents()


def test_one_that_restores_to_something_else_is_called_faulty(place, tmp_path):
    with pytest.raises(FaultyBackup, match="table cow has 20 rows, not 19"):
        make(Place(TamperedStore(place.store.address), place.folder), tmp_path)
    assert [told.state for told in backups_in(tmp_path / "out")] == [BackupState.FAULTY]


def test_a_restore_that_is_not_what_it_says_leaves_the_database_empty(place, empty, tmp_path):
    store = TamperedStore(place.store.address)
    made = make(Place(store, place.folder), tmp_path, is_tried_out=False)
    with pytest.raises(FaultyBackup, match="table cow has 20 rows, not 19"):
        restore_backup(file=made.path, place=empty)
    empty.store.refuse_unless_empty()
    run_in(empty.store.address, LAID)


def test_a_dump_that_breaks_off_leaves_the_database_empty(place, empty, tmp_path):
    dump = tmp_path / "database.dump"
    told = place.store.take(dump)
    dump.write_bytes(dump.read_bytes()[:-400])
    with pytest.raises(BackupProblem, match="pg_restore failed"):
        empty.store.load(dump, told)
    empty.store.refuse_unless_empty()


def test_a_user_who_may_make_no_database_keeps_the_backup_unverified(place, tmp_path):
    address = place.store.address
    role = f"trimmer_{address.name[-12:]}"
    run_in(address, f"CREATE ROLE {role} LOGIN; GRANT pg_read_all_data TO {role}")
    try:
        narrow = PostgresAddress({**address.parts, "user": role})
        with pytest.raises(NotVerified, match="CREATEDB"):
            make(place_of_postgres(narrow, place.folder.path), tmp_path)
    finally:
        run_in(address, f"REVOKE pg_read_all_data FROM {role}; DROP ROLE {role}")
    assert [told.state for told in backups_in(tmp_path / "out")] == [BackupState.UNVERIFIED]


def test_what_a_killed_trial_left_on_the_server_is_cleared_away(place, tmp_path):
    left = f"{TRY_OUT}{place.store._mark()}_abc"
    other = f"{TRY_OUT}000000000000_abc"
    run_in(place.store.address, f"CREATE DATABASE {left}")
    run_in(place.store.address, f"CREATE DATABASE {other}")
    make(place, tmp_path)
    assert left not in databases()
    assert other in databases()
    run_in(place.store.address, f"DROP DATABASE {other}")


def test_the_engine_must_be_the_same(place, empty, tmp_path):
    lite = filled_place(tmp_path / "lite")
    with pytest.raises(BackupProblem, match="is of SQLite, and the database that is set is of PostgreSQL"):
        restore_backup(file=make(lite, tmp_path / "lite").path, place=empty)
    with pytest.raises(BackupProblem, match="is of PostgreSQL, and the database that is set is of SQLite"):
        restore_backup(file=make(place, tmp_path).path, place=empty_place(tmp_path / "new"))
