from datetime import UTC, datetime, timedelta

import pytest

from trimops.watch.timetable import last_beat, note_beat

AT = datetime(2026, 3, 2, 12, tzinfo=UTC)


@pytest.fixture(autouse=True)
def _folder(settings, tmp_path):
    settings.DATA_DIR, settings.REDIS_URL = tmp_path, ""


def test_nobody_has_kept_it_yet():
    assert last_beat() is None


def test_the_last_time_is_known_to_whoever_reads_the_same_folder(tmp_path):
    note_beat(AT)
    note_beat(AT + timedelta(seconds=10))
    assert last_beat() == AT + timedelta(seconds=10)


def test_a_sign_that_is_being_written_is_none_at_all(tmp_path):
    (tmp_path / "timetable-beat").write_text("")
    assert last_beat() is None


def test_with_a_broker_it_lies_in_the_cache_that_all_share(settings, tmp_path):
    settings.REDIS_URL = "redis://somewhere"
    note_beat(AT)
    assert last_beat() == AT
    assert not list(tmp_path.iterdir())
