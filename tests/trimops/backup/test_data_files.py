"""Which files of the data folder belong into a backup, and how they come back."""

from pathlib import Path

import pytest

from tests.trimops.backup.small_places import empty_place, filled_place
from trimops.backup.data_files import DataFolder, copy_files, put_back, refuse_other_files
from trimops.backup.disk import file_sum
from trimops.backup.errors import NotEmpty
from trimops.backup.work_folder import work_folder


@pytest.fixture
def folder(tmp_path):
    return filled_place(tmp_path).folder


def named(folder):
    return [path.relative_to(folder.path).as_posix() for path in folder.files()]


def test_everything_but_the_database_what_is_left_out_and_what_is_in_work(folder):
    (folder.path / "backups").mkdir()
    (folder.path / "backups" / "old.tar").touch()
    (folder.path / "trimops.sqlite3-wal").touch()
    # because: opened and closed within a process, it would take from it every lock that it holds by it
    (folder.path / "trimops.sqlite3.locks").touch()
    with work_folder(folder.path) as work:
        (work / "half").touch()
        assert named(folder.without(folder.path / "backups")) == ["secret-key", "mail/one.log"]


def test_what_is_left_out_is_so_however_it_was_named(folder, tmp_path, monkeypatch):
    (folder.path / "backups").mkdir()
    (folder.path / "backups" / "notes").touch()
    (tmp_path / "link").symlink_to(folder.path / "backups")
    monkeypatch.chdir(tmp_path)
    there = DataFolder(Path("data"), frozenset([tmp_path / "link", *empty_place(Path("data")).store.files()]))
    assert [path.as_posix() for path in there.files()] == ["data/secret-key", "data/mail/one.log"]


def test_a_backup_is_no_part_of_another_wherever_it_lies(folder):
    (folder.path / "mail" / "trimops-20261130T020000Z.tar.enc").touch()
    assert named(folder) == ["secret-key", "mail/one.log"]


def test_a_link_to_a_file_is_taken_as_a_file_and_one_to_a_folder_is_told(folder, tmp_path):
    (tmp_path / "kept-elsewhere").write_text("signs")
    (folder.path / "secret-key").unlink()
    (folder.path / "secret-key").symlink_to(tmp_path / "kept-elsewhere")
    (folder.path / "letters").symlink_to(tmp_path)
    copied = copy_files(folder, tmp_path / "copy")
    assert (tmp_path / "copy" / "secret-key").read_text() == "signs"
    assert set(copied) == {"secret-key", "mail/one.log"}
    assert folder.links_left_out() == [folder.path / "letters"]


def test_files_come_back_as_they_were(folder, tmp_path):
    copied = copy_files(folder, tmp_path / "copy")
    put_back(tmp_path / "copy", tmp_path / "new", copied)
    assert {name: file_sum(tmp_path / "new" / name) for name in copied} == copied
    assert (tmp_path / "new" / "secret-key").stat().st_mode & 0o777 == 0o600


def test_a_signing_key_that_was_made_meanwhile_is_set_aside_and_not_lost(folder, tmp_path):
    copied = copy_files(folder, tmp_path / "copy")
    new = tmp_path / "new"
    new.mkdir()
    (new / "secret-key").write_text("made when the program started")
    refuse_other_files(new, copied)
    put_back(tmp_path / "copy", new, copied)
    assert (new / "secret-key").read_text() == "signs what was mailed"
    assert (new / "secret-key.before-restore").read_text() == "made when the program started"


def test_no_other_file_is_written_over(folder, tmp_path):
    copied = copy_files(folder, tmp_path / "copy")
    (tmp_path / "new" / "mail").mkdir(parents=True)
    (tmp_path / "new" / "mail" / "one.log").write_bytes(b"another mail")
    with pytest.raises(NotEmpty, match=r"one\.log is there already"):
        refuse_other_files(tmp_path / "new", copied)
    (tmp_path / "new" / "mail" / "one.log").write_bytes((folder.path / "mail" / "one.log").read_bytes())
    refuse_other_files(tmp_path / "new", copied)
