"""A cache in a file, which all processes of this machine share: limits count for all of them together.

For the embedded form. A count costs some tens of microseconds, and no lock of the business's database is touched.
"""

import json
import os
import sqlite3
import time
from functools import cache
from pathlib import Path
from threading import Lock

from django.core.cache.backends.base import DEFAULT_TIMEOUT, BaseCache

NEVER = 9e99
SWEPT_EACH = 1_000
TABLE = "CREATE TABLE IF NOT EXISTS kept (key TEXT PRIMARY KEY, value TEXT NOT NULL, ends REAL NOT NULL) WITHOUT ROWID"


class SharedCache(BaseCache):
    """Holds plain values (JSON), so that nobody who writes into the file has anything run by us.

    `LOCATION` is the file. What the file refuses is a `sqlite3.Error`.
    """

    def __init__(self, location: str, params: dict[str, object]) -> None:
        super().__init__(params)
        self._path = location

    def get(self, key: str, default: object = None, version: int | None = None) -> object:
        rows = self._ask(
            "SELECT value FROM kept WHERE key = ? AND ends > ?", self._name(key, version), _now()
        )
        return json.loads(rows[0][0]) if rows else default

    def set(
        self,
        key: str,
        value: object,
        timeout: float | object | None = DEFAULT_TIMEOUT,
        version: int | None = None,
    ) -> None:
        self._ask(
            "INSERT OR REPLACE INTO kept VALUES (?, ?, ?)",
            *(self._name(key, version), json.dumps(value), self._ends(timeout)),
        )

    def add(
        self,
        key: str,
        value: object,
        timeout: float | object | None = DEFAULT_TIMEOUT,
        version: int | None = None,
    ) -> bool:
        """One step: of two who add the same at the same moment one is told True."""
        rows = self._ask(
            "INSERT INTO kept VALUES (?, ?, ?) ON CONFLICT (key) DO UPDATE"
            " SET value = excluded.value, ends = excluded.ends WHERE ends <= ? RETURNING 1",
            *(self._name(key, version), json.dumps(value), self._ends(timeout), _now()),
        )
        return bool(rows)

    def incr(self, key: str, delta: int = 1, version: int | None = None) -> int:
        """One step. ValueError where there is nothing to count on."""
        rows = self._ask(
            "UPDATE kept SET value = CAST(value AS INTEGER) + ? WHERE key = ? AND ends > ? RETURNING value",
            *(delta, self._name(key, version), _now()),
        )
        if not rows:
            raise ValueError(f"Nothing is kept under {key!r}.")
        return int(rows[0][0])

    def touch(
        self, key: str, timeout: float | object | None = DEFAULT_TIMEOUT, version: int | None = None
    ) -> bool:
        return bool(
            self._ask(
                "UPDATE kept SET ends = ? WHERE key = ? AND ends > ? RETURNING 1",
                *(self._ends(timeout), self._name(key, version), _now()),
            )
        )

    def delete(self, key: str, version: int | None = None) -> bool:
        return bool(self._ask("DELETE FROM kept WHERE key = ? RETURNING 1", self._name(key, version)))

    def clear(self) -> None:
        self._ask("DELETE FROM kept")

    def _name(self, key: str, version: int | None) -> str:
        return self.make_and_validate_key(key, version=version)

    def _ends(self, timeout: float | object | None) -> float:
        ends = self.get_backend_timeout(timeout)  # type: ignore[arg-type]  # because: its types know no default
        return NEVER if ends is None else float(ends)

    def _ask(self, words: str, *values: object) -> list[tuple[str]]:
        # because: a connection that was opened before a fork must not be used after it
        return _store(self._path, os.getpid()).ask(words, values, self._max_entries)


class _Store:
    """One connection for all threads of the process."""

    def __init__(self, path: str) -> None:
        self._lock, self._asked = Lock(), 0
        try:
            self._line = _opened(path)
        except sqlite3.OperationalError:
            raise
        except sqlite3.DatabaseError:
            # because: a file that a full disk spoiled holds counts alone, and must not keep everybody out
            for end in ("", "-wal", "-shm"):
                Path(path + end).unlink(missing_ok=True)
            self._line = _opened(path)

    def ask(self, words: str, values: tuple[object, ...], most: int) -> list[tuple[str]]:
        with self._lock:
            self._asked += 1
            if self._asked % SWEPT_EACH == 0:
                self._sweep(most)
            return self._line.execute(words, values).fetchall()

    def _sweep(self, most: int) -> None:
        """What has ended goes; where there are too many left, those that end soonest."""
        self._line.execute("DELETE FROM kept WHERE ends <= ?", (_now(),))
        (count,) = self._line.execute("SELECT count(*) FROM kept").fetchone()
        if count > most:
            soonest = "SELECT key FROM kept ORDER BY ends LIMIT ?"
            self._line.execute(f"DELETE FROM kept WHERE key IN ({soonest})", (count - most * 3 // 4,))


def _opened(path: str) -> sqlite3.Connection:
    """Readable by its owner alone. Written to the disk when the system likes: counts may be lost with the power."""
    Path(path).parent.mkdir(parents=True, exist_ok=True)
    Path(path).touch(mode=0o600)
    line = sqlite3.connect(path, timeout=5, isolation_level=None, check_same_thread=False)
    line.execute("PRAGMA journal_mode=WAL")
    line.execute("PRAGMA synchronous=NORMAL")
    line.execute(TABLE)
    return line


@cache
def _store(path: str, process: int) -> _Store:
    return _Store(path)


def _now() -> float:
    return time.time()
