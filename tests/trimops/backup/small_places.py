"""Small places to back up and to restore into: a database by hand with rows, a trigger and a file or two beside it."""

import sqlite3
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

from trimops.backup.place import Place, place_of_sqlite

AT = datetime(2026, 11, 30, 2, 0, tzinfo=UTC)
KEY = "nine sound cows in a crush"
LAID = """
    CREATE TABLE farm (id integer PRIMARY KEY, name text NOT NULL);
    CREATE TABLE cow (id integer PRIMARY KEY, farm_id integer NOT NULL REFERENCES farm (id), tag text, photo blob);
    CREATE TABLE django_migrations (id integer PRIMARY KEY, app text, name text);
    CREATE INDEX cow_farm ON cow (farm_id);
    CREATE TRIGGER cow_stays BEFORE UPDATE ON cow BEGIN SELECT RAISE(ABORT, 'it stays'); END;
    INSERT INTO django_migrations (app, name) VALUES ('farms', '0001_initial');
    INSERT INTO farm (name) VALUES ('Høje Eng'), ('Low Tarnock');
"""


def opened(path: Path):
    return closing(sqlite3.connect(path, isolation_level=None, timeout=20))


def filled_place(folder: Path, cows: int = 20) -> Place:
    """`folder/data` with a database in WAL mode, a signing key and a mail."""
    place = empty_place(folder / "data")
    place.folder.path.mkdir(parents=True)
    with opened(place.store.path) as database:
        database.execute("PRAGMA journal_mode = WAL")
        database.executescript(LAID)
        rows = [(1 + n % 2, f"UK{n:05}", bytes([n % 256]) * 3000) for n in range(cows)]
        database.execute("BEGIN")
        database.executemany("INSERT INTO cow (farm_id, tag, photo) VALUES (?, ?, ?)", rows)
        database.execute("COMMIT")
    (place.folder.path / "secret-key").write_text("signs what was mailed")
    (place.folder.path / "mail").mkdir()
    (place.folder.path / "mail" / "one.log").write_bytes(b"Subject: draft list\n" * 50)
    return place


def empty_place(data_dir: Path) -> Place:
    return place_of_sqlite(data_dir / "trimops.sqlite3", data_dir)


def rows_of(place: Place, query: str) -> list[tuple]:
    with opened(place.store.path) as database:
        return database.execute(query).fetchall()


def run_in(place: Place, statements: str) -> None:
    with opened(place.store.path) as database:
        database.executescript(statements)
