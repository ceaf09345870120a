"""Counting in windows of time, in the cache: one number for each, which all processes share where it is Redis."""

import logging
import time

from django.core.cache import cache
from redis.exceptions import RedisError

log = logging.getLogger(__name__)


def count_one(what: str, seconds: int) -> tuple[int, int]:
    """One more of it in the window of now: how many there are, and for how many seconds the window goes on.

    At the border of two windows twice as many can come in a short time. Without the cache nothing is counted (0): that
    a limit fails must not keep anybody from their work.
    """
    key, left = _window(what, seconds)
    try:
        # because: to add and to count up are one step each, so that nobody is lost between two processes
        cache.add(key, 0, timeout=left + 1)
        return int(cache.incr(key)), left
    except (RedisError, ValueError):  # because: ValueError is a window that ended between the two steps
        log.warning("%s is not counted", what.partition(":")[0])
        return 0, left


def counted(what: str, seconds: int) -> tuple[int, int]:
    """How many there are in the window of now, and for how many seconds it goes on."""
    key, left = _window(what, seconds)
    try:
        return int(cache.get(key, 0)), left
    except RedisError:
        return 0, left


def _window(what: str, seconds: int) -> tuple[str, int]:
    now = time.time()
    number = int(now // seconds)
    return f"counted:{what}:{number}", max(1, int((number + 1) * seconds - now))
