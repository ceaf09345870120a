"""`manage.py backup` and `restore` as a person at a terminal meets them."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from django.core.management import CommandError, call_command

from tests.trimops.backup.small_places import KEY, empty_place, filled_place, rows_of
from trimops.backup.daily import DAILY, make_daily_backup
from trimops.backup.names import BackupState, backups_in
from trimops.backup.place import place_of_settings
from trimops.backup.retention import Keep


@pytest.fixture
def set_to(settings, monkeypatch):
    """Have the settings name a place, as the environment would."""

    def name(place):
        settings.DATA_DIR = place.folder.path
        database = {"ENGINE": "django.db.backends.sqlite3", "NAME": str(place.store.path)}
        monkeypatch.setitem(settings.DATABASES, "default", database)

    return name


@pytest.fixture
def at_home(tmp_path, settings, set_to):
    """The settings name a small place in `tmp_path`, and a folder for backups beside it."""
    place = filled_place(tmp_path)
    set_to(place)
    settings.BACKUP_DIR, settings.BACKUP_KEY, settings.ROADS_FILE = tmp_path / "out", "", ""
    # Tables made straight from the models (--nomigrations) hide the migrations from whatever comes later.
    settings.MIGRATION_MODULES = {}
    return place


def test_backup_says_what_it_holds_and_that_it_was_tried_out(at_home, capsys):
    call_command("backup")
    said = capsys.readouterr().out
    assert "3 tables with 23 rows, 2 files" in said
    assert "Restored for a trial: every table and file is the same." in said


def test_list_shows_what_is_known_of_each(at_home, capsys):
    call_command("backup", key_file=key_file(at_home))
    (at_home.folder.path.parent / "out" / "trimops-20260101T020000Z.tar.faulty").touch()
    call_command("backup", list=str(at_home.folder.path.parent / "out"))
    said = capsys.readouterr().out
    assert "open    faulty      trimops-20260101T020000Z.tar.faulty" in said
    assert "sealed  verified" in said
    assert "2 in" in said


def key_file(place):
    path = place.folder.path.parent / "key"
    path.write_text(KEY + "\n")
    return str(path)


def test_old_ones_are_dropped_only_when_it_is_asked_for(at_home, settings, capsys):
    settings.BACKUP_DIR.mkdir()
    old = settings.BACKUP_DIR / "trimops-20260101T020000Z.tar"
    old.touch()
    call_command("backup")
    assert old.exists()
    call_command("backup", to=str(settings.BACKUP_DIR / "second"), keep_days=1)
    (settings.BACKUP_DIR / "second" / "trimops-20260101T020000Z.tar").touch()
    with pytest.raises(CommandError, match="no --no-verify"):
        call_command("backup", keep_days=1, no_verify=True)
    with pytest.raises(CommandError, match="below nought"):
        call_command("backup", keep_days=-1)
    assert old.exists()


def test_without_verifying_the_name_says_so(at_home, settings, capsys):
    call_command("backup", no_verify=True)
    assert [told.state for told in backups_in(settings.BACKUP_DIR)] == [BackupState.UNVERIFIED]
    assert "Not tried out." in capsys.readouterr().out


def test_a_backup_that_fails_ends_with_a_fault_and_what_to_mend(at_home, settings):
    settings.BACKUP_KEY = "hoof"
    with pytest.raises(CommandError, match="at least 12 signs"):
        call_command("backup")


def test_restore_wants_it_said_aloud_and_prints_what_came_back(at_home, settings, set_to, capsys, tmp_path):
    call_command("backup")
    (made,) = backups_in(settings.BACKUP_DIR)
    with pytest.raises(CommandError, match="--into-empty"):
        call_command("restore", str(made.path))
    with pytest.raises(CommandError, match="holds rows already"):
        call_command("restore", str(made.path), "--into-empty")
    target = empty_place(tmp_path / "new")
    set_to(target)
    call_command("restore", str(made.path), "--into-empty")
    said = capsys.readouterr().out
    assert "20  cow" in said
    assert "23 rows and 2 files, each table and file proven to be the same" in said
    assert "now run `manage.py migrate`" in said
    assert rows_of(target, "SELECT count(*) FROM cow") == [(20,)]


def test_restore_says_when_the_signing_key_is_not_in_it(at_home, settings, set_to, capsys, tmp_path):
    (at_home.folder.path / "secret-key").unlink()
    call_command("backup")
    (made,) = backups_in(settings.BACKUP_DIR)
    target = empty_place(tmp_path / "new")
    target.folder.path.mkdir()
    (target.folder.path / "secret-key").write_text("made when the program started")
    set_to(target)
    call_command("restore", str(made.path), "--into-empty")
    assert "TRIMOPS_SECRET_KEY" in capsys.readouterr().out


def test_the_daily_one_goes_by_the_settings(at_home, settings):
    settings.BACKUP_KEY = KEY

    for days in range(2):
        made = make_daily_backup(at=datetime(2026, 11, 29, 2, tzinfo=UTC) + timedelta(days=days))
    assert made.path.name == "trimops-20261130T020000Z.tar.enc"
    assert Keep(days=7, weeks=5, months=12) == DAILY
    assert len(backups_in(settings.BACKUP_DIR)) == 2


def test_a_road_map_and_backups_in_the_data_folder_are_left_out(at_home, settings):
    data = at_home.folder.path
    for name in ("map.osrm", "map.osrm.hsgr", "notes.txt"):
        (data / name).touch()
    settings.ROADS_FILE, settings.BACKUP_DIR = str(data / "map.osrm"), data / "backups"
    (data / "backups").mkdir()
    (data / "backups" / "a.tar").touch()
    assert [path.name for path in place_of_settings().folder.files()] == [
        "notes.txt",
        "secret-key",
        "one.log",
    ]


def test_a_file_that_is_not_there_is_named(at_home, settings, tmp_path):
    with pytest.raises(CommandError, match="There is no file"):
        call_command("restore", str(Path(tmp_path) / "nowhere"), "--into-empty")
