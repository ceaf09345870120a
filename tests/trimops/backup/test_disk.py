"""Room for files, and files of one's own."""

import os
from pathlib import Path

import pytest

from trimops.backup.disk import SPARE, FileSum, file_sum, new_private_file, refuse_without_room
from trimops.backup.errors import BackupProblem

EMPTY = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"
"""SHA-256 of nothing (FIPS 180-4 examples; from memory)."""


def test_without_room_it_says_how_much_is_wanted_and_where(tmp_path):
    with pytest.raises(
        BackupProblem, match=r"has 100\.0 MB free, and about 1,133\.6 MB are needed"
    ) as refused:
        refuse_without_room([(tmp_path, 10**9)], free_in=lambda folder: 10**8)
    assert str(tmp_path) in refused.value.message


def test_two_folders_of_one_disk_need_room_for_both(tmp_path):
    free = SPARE + 1500
    refuse_without_room([(tmp_path, 1000)], free_in=lambda folder: free)
    with pytest.raises(BackupProblem):
        refuse_without_room([(tmp_path, 1000), (tmp_path, 1000)], free_in=lambda folder: free)


def test_the_disk_itself_is_asked(tmp_path):
    refuse_without_room([(tmp_path, 1)])
    with pytest.raises(BackupProblem):
        refuse_without_room([(tmp_path, 10**18)])


def test_a_new_file_is_its_owners_alone_and_never_an_old_one(tmp_path):
    was = os.umask(0)
    try:
        with new_private_file(tmp_path / "a") as sink:
            sink.write(b"cow")
    finally:
        os.umask(was)
    assert (tmp_path / "a").stat().st_mode & 0o777 == 0o600
    with pytest.raises(FileExistsError):
        new_private_file(tmp_path / "a")


def test_a_file_is_told_by_size_and_hash():
    assert file_sum(Path(os.devnull)) == FileSum(0, EMPTY)
