"""A backup is named good only after it was restored for a trial."""

from datetime import timedelta
from pathlib import Path
from threading import Event, Thread

import pytest

from tests.trimops.backup.small_places import AT, KEY, empty_place, filled_place, opened, rows_of, run_in
from trimops.backup.archive import read_manifest
from trimops.backup.errors import BackupProblem, FaultyBackup, NotVerified, WrongKey
from trimops.backup.make_backup import make_backup
from trimops.backup.names import BackupState, backups_in
from trimops.backup.place import Place
from trimops.backup.retention import Keep
from trimops.backup.sqlite_store import SqliteStore
from trimops.backup.work_folder import work_folder


def make(place, to, **changes):
    return make_backup(**{"place": place, "to": to, "at": AT, "program": "0.1.0", **changes})


def test_it_says_what_it_holds_and_leaves_nothing_else_behind(tmp_path):
    place = filled_place(tmp_path, cows=20)
    made = make(place, tmp_path / "out")
    assert made.path == tmp_path / "out" / "trimops-20261130T020000Z.tar"
    assert made.path.stat().st_mode & 0o777 == 0o600
    assert made.path.parent.stat().st_mode & 0o777 == 0o700
    assert made.state is BackupState.VERIFIED
    assert read_manifest(made.path, None) == made.manifest
    assert made.manifest.contents.tables["cow"].rows == 20
    assert set(made.manifest.files) == {"secret-key", "mail/one.log"}
    assert [path.name for path in made.path.parent.iterdir()] == [made.path.name]
    assert not list(place.folder.path.glob(".backup-work-*"))


def test_a_sealed_one_leaves_nothing_open_where_it_lies(tmp_path):
    made = make(filled_place(tmp_path), tmp_path / "out", key=KEY)
    assert made.path.name == "trimops-20261130T020000Z.tar.enc"
    assert b"Low Tarnock" not in made.path.read_bytes()
    assert b"signs what was mailed" not in made.path.read_bytes()


def test_a_short_key_makes_nothing(tmp_path):
    with pytest.raises(WrongKey):
        make(filled_place(tmp_path), tmp_path / "out", key="hoof")
    assert not (tmp_path / "out").exists()


def test_backups_in_the_data_folder_do_not_hold_one_another(tmp_path):
    place = filled_place(tmp_path)
    to = place.folder.path / "backups"
    first = make(place, to)
    second = make(place, to, at=AT + timedelta(days=1))
    assert second.manifest.files == first.manifest.files


class TamperedStore(SqliteStore):
    """A disk that loses a row between taking down and packing."""

    def take(self, dump: Path):
        told = super().take(dump)
        with opened(dump) as database:
            database.execute("DELETE FROM cow WHERE id = 7")
        return told


def test_one_that_restores_to_something_else_is_called_faulty(tmp_path):
    place = filled_place(tmp_path)
    place = Place(TamperedStore(place.store.path), place.folder)
    with pytest.raises(FaultyBackup, match="table cow has 19 rows, not 20"):
        make(place, tmp_path / "out", keep=Keep())
    (found,) = backups_in(tmp_path / "out")
    assert found.path.name == "trimops-20261130T020000Z.tar.faulty"


class BrokenStore(SqliteStore):
    """A row that points at nothing comes in past the program."""

    def take(self, dump: Path):
        run_in(Place(self, None), "PRAGMA foreign_keys = OFF; DELETE FROM farm WHERE id = 2")
        return super().take(dump)


def test_a_database_that_contradicts_itself_is_told(tmp_path):
    place = filled_place(tmp_path, cows=2)
    with pytest.raises(FaultyBackup, match="row 2 of cow points at a row of farm that is not there"):
        make(Place(BrokenStore(place.store.path), place.folder), tmp_path / "out")


class ServerlessStore(SqliteStore):
    """Nowhere to try it out."""

    def try_out(self, dump: Path, told):
        raise BackupProblem("The database's user may make no database.")


def test_one_that_cannot_be_tried_out_is_kept_under_a_name_that_says_so(tmp_path):
    place = filled_place(tmp_path)
    with pytest.raises(NotVerified, match="may make no database"):
        make(Place(ServerlessStore(place.store.path), place.folder), tmp_path / "out")
    (found,) = backups_in(tmp_path / "out")
    assert found.state is BackupState.UNVERIFIED
    assert make(place, tmp_path / "other", is_tried_out=False).path.name == found.path.name


def test_a_second_one_at_a_time_and_a_second_one_of_a_second_are_refused(tmp_path):
    place = filled_place(tmp_path)
    with work_folder(place.folder.path), pytest.raises(BackupProblem, match="Another backup"):
        make(place, tmp_path / "out")
    first = make(place, tmp_path / "out").path.read_bytes()
    with pytest.raises(BackupProblem, match="there already"):
        make(place, tmp_path / "out")
    assert [told.path.read_bytes() for told in backups_in(tmp_path / "out")] == [first]


def test_what_a_killed_one_left_in_the_data_folder_is_cleared_away(tmp_path):
    place = filled_place(tmp_path)
    left = place.folder.path / ".backup-work-abc"
    left.mkdir()
    (left / "database.sqlite3").touch()
    assert not [name for name in make(place, tmp_path / "out").manifest.files if "work" in name]
    assert not left.exists()


def test_what_a_killed_one_left_half_written_goes_after_a_day(tmp_path):
    place, to = filled_place(tmp_path), tmp_path / "out"
    to.mkdir()
    (to / ".trimops-20261128T020000Z.tar.part").touch()
    (to / ".trimops-20261130T015900Z.tar.enc.part").touch()
    made = make(place, to)
    assert {path.name for path in to.iterdir()} == {made.path.name, ".trimops-20261130T015900Z.tar.enc.part"}


def test_without_a_database_there_is_nothing_to_back_up(tmp_path):
    with pytest.raises(BackupProblem, match="TRIMOPS_DATA_DIR"):
        make(empty_place(tmp_path / "nowhere"), tmp_path / "out")
    assert list((tmp_path / "out").iterdir()) == []


def test_old_ones_go_by_what_is_to_be_kept_and_faulty_and_unverified_ones_stay(tmp_path):
    place, to = filled_place(tmp_path), tmp_path / "out"
    for days in range(4):
        make(place, to, at=AT + timedelta(days=days))
    (to / "trimops-20261120T020000Z-unverified.tar").touch()
    (to / "trimops-20261121T020000Z.tar.faulty").touch()
    made = make(place, to, at=AT + timedelta(days=4), keep=Keep(days=2))
    assert [path.name[8:16] for path in made.dropped] == ["20261130", "20261201", "20261202"]
    assert [told.stamp.day for told in backups_in(to)] == [20, 21, 3, 4]


def test_one_that_fails_drops_nothing(tmp_path):
    place, to = filled_place(tmp_path), tmp_path / "out"
    for days in range(3):
        make(place, to, at=AT + timedelta(days=days))
    with pytest.raises(FaultyBackup):
        make(
            Place(TamperedStore(place.store.path), place.folder),
            to,
            at=AT + timedelta(days=3),
            keep=Keep(days=1),
        )
    assert [told.state for told in backups_in(to)] == [BackupState.VERIFIED] * 3 + [BackupState.FAULTY]


def test_it_comes_to_an_end_however_much_is_written_meanwhile(tmp_path):
    """Without a pinned moment SQLite's backup begins anew after each write from elsewhere, and here never ends."""
    place, is_over = filled_place(tmp_path, cows=3000), Event()

    def write():
        with opened(place.store.path) as database:
            while not is_over.is_set():
                database.execute("INSERT INTO farm (name) VALUES ('meanwhile')")

    writer = Thread(target=write)
    writer.start()
    try:
        made = make(place, tmp_path / "out")
    finally:
        is_over.set()
        writer.join()
    assert made.manifest.contents.tables["cow"].rows == 3000
    assert made.manifest.contents.tables["farm"].rows < rows_of(place, "SELECT count(*) FROM farm")[0][0]


def test_a_file_that_is_no_database_is_told_and_not_backed_up(tmp_path):
    place = filled_place(tmp_path)
    for path in place.store.files():
        path.unlink(missing_ok=True)
    place.store.path.write_bytes(b"a shopping list" * 400)
    with pytest.raises(BackupProblem, match="cannot be read: file is not a database"):
        make(place, tmp_path / "out")
    assert list((tmp_path / "out").iterdir()) == []
