"""A backup's name says when it was made and what is known of it."""

from datetime import UTC, datetime, timedelta, timezone
from itertools import product
from pathlib import Path

import pytest

from trimops.backup.names import BackupFile, BackupState, backups_in, file_name, read_name

AT = datetime(2028, 2, 29, 23, 59, 59, tzinfo=UTC)


@pytest.mark.parametrize(("state", "is_sealed"), list(product(BackupState, (False, True))))
def test_a_name_is_read_as_it_was_given(state, is_sealed):
    path = Path("/x") / file_name(AT, is_sealed=is_sealed, state=state)
    assert read_name(path) == BackupFile(path, AT, state, is_sealed)


def test_the_stamp_is_utc():
    at = datetime(2026, 11, 30, 3, tzinfo=timezone(timedelta(hours=1)))
    assert file_name(at, is_sealed=True, state=BackupState.VERIFIED) == "trimops-20261130T020000Z.tar.enc"


@pytest.mark.parametrize(
    "name",
    [
        "trimops.sqlite3",
        ".trimops-20261130T020000Z.tar.part",
        "trimops-20261130T020000Z.tar.gz",
        "trimops-20261131T020000Z.tar",
        "my-trimops-20261130T020000Z.tar",
    ],
)
def test_other_files_are_no_backups(name):
    assert read_name(Path(name)) is None


def test_a_folder_is_listed_oldest_first_and_one_that_is_not_there_is_empty(tmp_path):
    for name in ("trimops-20261130T020000Z.tar", "trimops-20261129T020000Z.tar.enc", "notes.txt"):
        (tmp_path / name).touch()
    (tmp_path / "trimops-20261128T020000Z.tar").mkdir()
    assert [told.stamp.day for told in backups_in(tmp_path)] == [29, 30]
    assert backups_in(tmp_path / "nowhere") == []
