"""An SQLite database as a backup sees it: copied by its online backup, page by page, from one pinned moment."""

import os
import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass
from pathlib import Path

from trimops.backup.contents import Contents, differences
from trimops.backup.disk import flush_file, flush_folder
from trimops.backup.errors import BackupProblem, FaultyBackup, NotEmpty
from trimops.backup.sqlite_contents import rows_of_tables, sqlite_contents

PAGES_A_STEP = 2000
WAIT_SECONDS = 20
BESIDE = ("-wal", "-shm", "-journal")
LOCKS = ".locks"
"""Of `trimops.errands.only_one`: to open and close it in a process that holds locks by it would drop them all."""


@dataclass(frozen=True)
class SqliteStore:
    """The database in the file `path`."""

    path: Path
    engine: str = "sqlite"
    dump_name: str = "database.sqlite3"

    def files(self) -> list[Path]:
        """The database's file and those that SQLite keeps beside it."""
        return [self.path, *(self.path.with_name(self.path.name + end) for end in BESIDE)]

    def locks(self) -> Path:
        """Where those who work with the database lock what they are at. Empty, and no part of what is kept."""
        return self.path.with_name(self.path.name + LOCKS)

    def beside(self) -> Path:
        """Where a restore puts the database together before it takes its name."""
        return self.path.with_name(f".{self.path.name}.restoring")

    def size(self) -> int:
        return sum(path.stat().st_size for path in self.files() if path.exists())

    def dumped_by(self) -> str:
        return sqlite3.sqlite_version

    def take(self, dump: Path) -> Contents:
        if not self.path.exists():
            raise BackupProblem(f"There is no database at {self.path}. Is TRIMOPS_DATA_DIR the right folder?")
        try:
            told = self._copied(dump)
        except sqlite3.Error as error:
            raise BackupProblem(f"The database {self.path} cannot be read: {error}") from error
        flush_file(dump)
        return told

    def _copied(self, dump: Path) -> Contents:
        with _opened(self.path) as source, _opened(dump) as copy:
            # because: a read that stays open pins the moment. Without it each write of another process makes the
            # copying begin anew, and under steady work it never ends.
            copy.execute("PRAGMA synchronous = OFF")
            source.execute("BEGIN")
            source.execute("SELECT count(*) FROM sqlite_master").fetchone()
            source.backup(copy, pages=PAGES_A_STEP, sleep=0)
            told = sqlite_contents(source)
            source.execute("ROLLBACK")
            # One plain file, with nothing beside it that could be left behind.
            copy.execute("PRAGMA journal_mode = DELETE")
        return told

    def try_out(self, dump: Path, told: Contents) -> list[str]:
        try:
            with _opened(dump) as copy:
                return [*_broken(copy), *differences(told, sqlite_contents(copy))]
        except sqlite3.DatabaseError as error:
            return [f"the database cannot be read ({error})"]

    def refuse_unless_empty(self) -> None:
        if not self.path.exists():
            return
        try:
            with _opened(self.path) as database:
                _refuse_rows(database, self.path)
                # because: it lets go of the -wal only when nobody else has the database open
                database.execute("PRAGMA journal_mode = DELETE")
        except sqlite3.OperationalError as error:
            raise NotEmpty(
                f"{self.path} is in use ({error}): stop the site and its workers first."
            ) from error
        except sqlite3.DatabaseError as error:
            raise NotEmpty(
                f"{self.path} is there and is no database ({error}): choose an empty folder."
            ) from error

    def load(self, dump: Path, told: Contents) -> None:
        self.path.parent.mkdir(parents=True, exist_ok=True)
        beside = self.beside()
        beside.unlink(missing_ok=True)
        try:
            shutil.copyfile(dump, beside)
            if wrong := self.try_out(beside, told):
                raise FaultyBackup("The backup does not restore to what it says: " + "; ".join(wrong[:20]))
            os.chmod(beside, 0o600)
            flush_file(beside)
            self.refuse_unless_empty()
            for stale in self.files():
                stale.unlink(missing_ok=True)
            os.replace(beside, self.path)
            flush_folder(self.path.parent)
        finally:
            beside.unlink(missing_ok=True)


@contextmanager
def _opened(path: Path) -> Iterator[sqlite3.Connection]:
    with closing(sqlite3.connect(path, isolation_level=None, timeout=WAIT_SECONDS)) as connection:
        yield connection


def _refuse_rows(database: sqlite3.Connection, path: Path) -> None:
    filled = rows_of_tables(database)
    if filled:
        name, rows = max(filled.items(), key=lambda one: one[1])
        raise NotEmpty(
            f"{path} holds rows already ({len(filled)} tables with some, {rows} in {name}). A restore never writes "
            "over what is there: set TRIMOPS_DATA_DIR to a new, empty folder and restore into that."
        )


def _broken(copy: sqlite3.Connection) -> Iterator[str]:
    """What SQLite's own checks say."""
    for (line,) in copy.execute("PRAGMA integrity_check").fetchall():
        if line != "ok":
            yield f"integrity_check: {line}"
    for table, row, parent, _ in copy.execute("PRAGMA foreign_key_check").fetchall():
        yield f"row {row} of {table} points at a row of {parent} that is not there"
