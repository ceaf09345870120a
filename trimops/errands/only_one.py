"""A lock that at most one thread of one process holds, and that is free the moment its process dies, however it dies.

On PostgreSQL it is an advisory lock of the session, gone with the connection (so not behind a pooler that shares
sessions by transaction). On SQLite it is a lock on one byte of a file beside the database, which the system drops with
the process. Both would be given twice to one process, so within a process they are told apart by a set.
"""

import fcntl
import hashlib
import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager

from django.db import Error, connection

KEYS = 2**62
"""Fits a byte's place in a file as well as PostgreSQL's bigint."""


class _Held:
    """What this process holds. A child that was forked holds nothing of it: locks are not inherited."""

    def __init__(self) -> None:
        self.guard = threading.Lock()
        self.keys: set[tuple[str, int]] = set()
        self.files: dict[str, int] = {}


_held = _Held()


def _begin_anew() -> None:
    # The inherited file stays open in the child: to close it there drops none of the parent's locks, and gains nothing.
    globals()["_held"] = _Held()


os.register_at_fork(after_in_child=_begin_anew)


@contextmanager
def only_one(name: str) -> Iterator[bool]:
    """Whether this block alone holds the lock `name` of this database until it ends; it never waits.

    Not given a second time to who holds it already. Where the connection to PostgreSQL breaks meanwhile the lock is
    lost, and another may have it before the block ends.
    """
    key = int.from_bytes(hashlib.sha256(name.encode()).digest()[:8]) % KEYS
    database = str(connection.settings_dict["NAME"])
    if not _claim(database, key):
        yield False
        return
    try:
        with (
            _session_lock(key) if connection.vendor == "postgresql" else _byte_lock(database, key) as is_mine
        ):
            yield is_mine
    finally:
        with _held.guard:
            _held.keys.discard((database, key))


def _claim(database: str, key: int) -> bool:
    with _held.guard:
        is_free = (database, key) not in _held.keys
        _held.keys.add((database, key))
        return is_free


@contextmanager
def _session_lock(key: int) -> Iterator[bool]:
    with connection.cursor() as cursor:
        cursor.execute("SELECT pg_try_advisory_lock(%s)", [key])
        (is_mine,) = cursor.fetchone()
    session = connection.connection
    try:
        yield is_mine
    finally:
        # because: with the connection the lock is gone as well
        if is_mine and session is not None and connection.connection is session:
            _unlock(key)


def _unlock(key: int) -> None:
    """However it goes the lock is free afterwards: a connection that cannot unlock (broken, or inside a transaction
    that has failed) is closed, or it would keep the lock for as long as it is used again."""
    is_free = False
    try:
        with connection.cursor() as cursor:
            cursor.execute("SELECT pg_advisory_unlock(%s)", [key])
        is_free = True
    except Error:
        pass
    finally:
        if not is_free:
            connection.close()


@contextmanager
def _byte_lock(database: str, key: int) -> Iterator[bool]:
    if connection.is_in_memory_db():  # type: ignore[attr-defined]
        # Nobody else can see such a database.
        yield True
        return
    file = _file_of(database)
    is_mine = _lock_byte(file, key)
    try:
        yield is_mine
    finally:
        if is_mine:
            fcntl.lockf(file, fcntl.LOCK_UN, 1, key)


def _file_of(database: str) -> int:
    """One open file for the whole process: closing any other of the same file would drop all of its locks."""
    with _held.guard:
        if database not in _held.files:
            _held.files[database] = os.open(f"{database}.locks", os.O_RDWR | os.O_CREAT, 0o600)
        return _held.files[database]


def _lock_byte(file: int, key: int) -> bool:
    try:
        fcntl.lockf(file, fcntl.LOCK_EX | fcntl.LOCK_NB, 1, key)
    except (BlockingIOError, PermissionError):
        # POSIX lets a system say either where another process holds it.
        return False
    return True
