"""A backup is made by itself once a day, and by one process."""

from datetime import UTC, datetime, timedelta

import pytest

from trimops.backup.names import BackupState, file_name
from trimops.errands.only_one import only_one
from trimops.errands.selectors.newest_backup import newest_backup
from trimops.errands.services.keep_backup import is_backup_due, keep_backup

NOW = datetime(2026, 3, 2, 2, 45, tzinfo=UTC)

pytestmark = pytest.mark.django_db


@pytest.fixture
def shelf(settings, tmp_path):
    settings.BACKUP_DIR = tmp_path

    def lay(hours, state=BackupState.VERIFIED):
        at = NOW - timedelta(hours=hours)
        (tmp_path / file_name(at, is_sealed=False, state=state)).touch()
        return at

    return lay


def test_where_there_is_none_one_is_due(shelf):
    assert newest_backup() is None
    assert is_backup_due(NOW)


@pytest.mark.parametrize(("hours", "due"), [(1, False), (22, False), (23, True), (24, True), (200, True)])
def test_the_next_is_due_a_day_after_the_newest(shelf, hours, due):
    shelf(300)
    assert newest_backup() != shelf(hours)
    assert newest_backup() == NOW - timedelta(hours=hours)
    assert is_backup_due(NOW) is due


@pytest.mark.parametrize("state", [BackupState.FAULTY, BackupState.UNVERIFIED])
def test_one_that_was_not_tried_out_does_not_count_but_fills_no_disk_by_the_hour(shelf, state):
    shelf(30)
    shelf(6, state)
    assert is_backup_due(NOW)
    shelf(5, state)
    assert not is_backup_due(NOW)


def test_a_newer_one_is_enough(shelf):
    shelf(3)
    assert keep_backup(now=NOW) is None


def test_while_another_process_is_at_it_none_is_made(shelf):
    with only_one("backup"):
        assert keep_backup(now=NOW) is None
    assert newest_backup() is None
