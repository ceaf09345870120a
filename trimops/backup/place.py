"""What is backed up, or filled by a restore: a database and the data folder beside it."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from django.conf import settings

from trimops.backup.data_files import DataFolder
from trimops.backup.errors import BackupProblem
from trimops.backup.postgres_address import PostgresAddress
from trimops.backup.postgres_store import PostgresStore
from trimops.backup.sqlite_store import SqliteStore
from trimops.backup.store import Store


@dataclass(frozen=True)
class Place:
    """`folder` without what a backup leaves out."""

    store: Store
    folder: DataFolder


def place_of_sqlite(path: Path, data_dir: Path, *left_out: Path) -> Place:
    """The database in the file `path` and the folder `data_dir`, less the files and folders `left_out`."""
    store = SqliteStore(path)
    return Place(
        store, DataFolder(data_dir, frozenset([*store.files(), store.locks(), store.beside(), *left_out]))
    )


def place_of_postgres(address: PostgresAddress, data_dir: Path, *left_out: Path) -> Place:
    return Place(PostgresStore(address), DataFolder(data_dir, frozenset(left_out)))


def place_of_settings() -> Place:
    """The one that the settings name. Backups and road maps in the data folder are no part of it."""
    database: Mapping[str, object] = settings.DATABASES["default"]
    engine = str(database["ENGINE"])
    left_out = [Path(settings.BACKUP_DIR), *_road_map()]
    if engine.endswith("postgresql"):
        return place_of_postgres(PostgresAddress.of_settings(database), settings.DATA_DIR, *left_out)
    if not engine.endswith("sqlite3"):
        raise BackupProblem(f"A database of {engine} is not one that backups know.")
    return place_of_sqlite(Path(str(database["NAME"])), settings.DATA_DIR, *left_out)


def _road_map() -> list[Path]:
    """A prepared map is many files of one beginning, and gigabytes; it can be prepared again."""
    if not settings.ROADS_FILE:
        return []
    named = Path(settings.ROADS_FILE)
    return [named, *named.parent.glob(f"{named.name}.*")]
