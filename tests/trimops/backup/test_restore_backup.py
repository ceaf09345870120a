"""A restore fills what is empty with exactly what was taken down, or leaves it empty."""

import sqlite3
import subprocess
import sys
from pathlib import Path

import pytest

from tests.architecture.source_tree import ROOT
from tests.trimops.backup.small_places import AT, KEY, empty_place, filled_place, opened, rows_of, run_in
from trimops.backup.contents import differences
from trimops.backup.errors import BackupProblem, FaultyBackup, NotEmpty, OlderProgram, WrongKey
from trimops.backup.make_backup import make_backup
from trimops.backup.restore_backup import restore_backup
from trimops.backup.sqlite_contents import sqlite_contents


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """One backup for the file's tests, and the place that it is of."""
    folder = tmp_path_factory.mktemp("made")
    place = filled_place(folder)
    return place, make_backup(place=place, to=folder / "out", at=AT, program="0.1.0").path


def told(place):
    with opened(place.store.path) as database:
        return sqlite_contents(database)


def test_it_is_all_there_again(made, tmp_path):
    place, file = made
    target = empty_place(tmp_path / "new")
    manifest = restore_backup(file=file, place=target)
    assert differences(told(place), told(target)) == []
    assert differences(manifest.contents, told(target)) == []
    for path in place.folder.files():
        assert (target.folder.path / path.relative_to(place.folder.path)).read_bytes() == path.read_bytes()
    assert target.store.path.stat().st_mode & 0o777 == 0o600
    assert sorted(path.name for path in target.folder.path.iterdir()) == [
        ".backup-lock",
        "mail",
        "secret-key",
        "trimops.sqlite3",
    ]


def test_its_triggers_refuse_as_before(made, tmp_path):
    target = empty_place(tmp_path / "new")
    restore_backup(file=made[1], place=target)
    with pytest.raises(sqlite3.IntegrityError, match="it stays"):
        run_in(target, "UPDATE cow SET tag = 'other' WHERE id = 1")


def test_what_was_restored_can_be_backed_up_again_and_is_the_same(made, tmp_path):
    target = empty_place(tmp_path / "new")
    first = restore_backup(file=made[1], place=target)
    again = make_backup(place=target, to=tmp_path / "out", at=AT, program="0.1.0")
    assert again.manifest.contents == first.contents
    assert again.manifest.files == first.files


def test_a_sealed_one_comes_back_with_its_key_only(made, tmp_path):
    place, _ = made
    file = make_backup(place=place, to=tmp_path / "out", at=AT, program="0.1.0", key=KEY).path
    target = empty_place(tmp_path / "new")
    for key in (None, KEY + "!"):
        with pytest.raises(WrongKey):
            restore_backup(file=file, place=target, key=key)
    assert not target.store.path.exists()
    restore_backup(file=file, place=target, key=KEY)
    assert differences(told(place), told(target)) == []


def test_a_database_with_one_row_is_left_alone(made, tmp_path):
    target = empty_place(tmp_path)
    run_in(target, "CREATE TABLE cow (id integer); INSERT INTO cow VALUES (1)")
    with pytest.raises(NotEmpty, match=r"holds rows already \(1 tables with some, 1 in cow\)"):
        restore_backup(file=made[1], place=target)
    assert rows_of(target, "SELECT * FROM cow") == [(1,)]


def test_one_with_tables_and_no_rows_is_empty(made, tmp_path):
    target = empty_place(tmp_path)
    run_in(target, "PRAGMA journal_mode = WAL; CREATE TABLE cow (id integer)")
    restore_backup(file=made[1], place=target)
    assert rows_of(target, "SELECT count(*) FROM cow") == [(20,)]


def test_an_empty_one_that_somebody_has_open_is_left_alone(made, tmp_path):
    """The -wal of a database that is open would be played into the one that takes its place."""
    target = empty_place(tmp_path)
    run_in(target, "PRAGMA journal_mode = WAL; CREATE TABLE cow (id integer)")
    with opened(target.store.path) as site:
        site.execute("SELECT * FROM cow").fetchall()
        with pytest.raises(NotEmpty, match="stop the site"):
            restore_backup(file=made[1], place=target)


def test_what_is_no_database_is_not_written_over(made, tmp_path):
    target = empty_place(tmp_path)
    target.store.path.write_bytes(b"a shopping list" * 400)
    with pytest.raises(NotEmpty, match="no database"):
        restore_backup(file=made[1], place=target)


def test_a_mail_of_the_same_name_is_not_written_over(made, tmp_path):
    (tmp_path / "mail").mkdir()
    (tmp_path / "mail" / "one.log").write_bytes(b"another")
    target = empty_place(tmp_path)
    with pytest.raises(NotEmpty):
        restore_backup(file=made[1], place=target)
    assert not target.store.path.exists()


def test_who_refuses_the_manifest_leaves_the_place_empty(made, tmp_path):
    def refuse(manifest):
        raise OlderProgram("newer")

    target = empty_place(tmp_path / "new")
    with pytest.raises(OlderProgram):
        restore_backup(file=made[1], place=target, accept=refuse)
    assert [path.name for path in target.folder.path.iterdir()] == [".backup-lock"]


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9])
def test_a_file_cut_short_leaves_the_place_empty(made, tmp_path, share):
    raw = made[1].read_bytes()
    short = tmp_path / "short.tar"
    short.write_bytes(raw[: round(share * len(raw))])
    target = empty_place(tmp_path / "new")
    with pytest.raises(FaultyBackup):
        restore_backup(file=short, place=target)
    assert [path.name for path in target.folder.path.iterdir()] == [".backup-lock"]


def test_a_file_that_is_not_there_is_told(tmp_path):
    with pytest.raises(BackupProblem, match="There is no file"):
        restore_backup(file=tmp_path / "nowhere.tar", place=empty_place(tmp_path))


DIES = """
import os, sys
from pathlib import Path
from tests.trimops.backup.small_places import empty_place
from trimops.backup.restore_backup import restore_backup

left = int(sys.argv[3])

def dies(event, args):
    global left
    if event in ("os.rename", "os.remove", "sqlite3.connect", "shutil.copyfile", "os.mkdir"):
        left -= 1
        if left < 0:
            os._exit(9)

sys.addaudithook(dies)
restore_backup(file=Path(sys.argv[1]), place=empty_place(Path(sys.argv[2])))
"""


@pytest.mark.parametrize("step", [2, 6, 8, 11, 12, 13, 17, 18])
def test_one_that_dies_on_the_way_left_it_empty_or_whole_and_can_be_begun_again(made, tmp_path, step):
    """The process ends without a word at its nth touch of the disk's names."""
    place, file = made
    target = empty_place(tmp_path / "new")
    env = {"DJANGO_SETTINGS_MODULE": "trimops.settings.test", "PATH": "/usr/bin", "PYTHONPATH": str(ROOT)}
    died = subprocess.run(
        [sys.executable, "-c", DIES, str(file), str(target.folder.path), str(step)], cwd=ROOT, env=env
    )
    assert died.returncode == 9
    if target.store.path.exists():
        assert differences(told(place), told(target)) == []
        return
    restore_backup(file=file, place=target)
    assert differences(told(place), told(target)) == []
    assert not list(Path(target.folder.path).glob(".backup-work-*"))
