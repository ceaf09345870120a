"""Counting in windows of time, in the cache: one number for each, which all processes share."""

import logging
import sqlite3
import time

from django.core.cache import cache
from django.core.cache.backends.base import BaseCache
from django.core.cache.backends.locmem import LocMemCache
from redis.exceptions import RedisError

log = logging.getLogger(__name__)

# What a cache that is not there says: the one of several machines, and the file of one.
GONE = (RedisError, sqlite3.Error)
OWN = LocMemCache("counted", {"OPTIONS": {"MAX_ENTRIES": 100_000}})
"""What this process counts while the cache is not there."""


def count_one(what: str, seconds: int) -> tuple[int, int]:
    """One more of it in the window of now: how many there are, and for how many seconds the window goes on.

    At the border of two windows twice as many can come in a short time. Without the cache each process counts for
    itself: a limit neither ends with it nor keeps anybody from their work.
    """
    key, left = _window(what, seconds)
    try:
        return _add_one(cache, key, left), left
    except (*GONE, ValueError):  # because: ValueError is a window that ended between the two steps
        log.warning("%s is counted by each process for itself", what.partition(":")[0])
        return _add_one(OWN, key, left), left


def _add_one(kept: BaseCache, key: str, left: int) -> int:
    # because: to add and to count up are one step each, so that nobody is lost between two processes
    kept.add(key, 0, timeout=left + 1)
    return int(kept.incr(key))


def counted(what: str, seconds: int) -> tuple[int, int]:
    """How many there are in the window of now, and for how many seconds it goes on."""
    key, left = _window(what, seconds)
    try:
        return int(cache.get(key, 0)), left
    except GONE:
        return int(OWN.get(key, 0)), left


def _window(what: str, seconds: int) -> tuple[str, int]:
    now = time.time()
    number = int(now // seconds)
    return f"counted:{what}:{number}", max(1, int((number + 1) * seconds - now))
