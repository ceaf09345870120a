"""Files made to do harm: small on the wire and huge inside, or work without end. Each with the inlet that it is for.

python -m tests.fuzz.bombs [--quick]   (tries each in a process of its own, and prints seconds and megabytes)
"""

import os
import resource
import sys
from collections.abc import Callable

import django
from django.conf import settings

if not settings.configured:
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "trimops.settings.test")
    django.setup()

from tests.fuzz.bomb_files import BOMBS
from tests.fuzz.inlets import INLETS
from tests.fuzz.tried import tried

MOST_MEGABYTES = 300


def try_all(told: Callable[[str], None] = print, *, quick: bool = False) -> None:
    """Each in a process of its own, so that what one takes is not hidden behind another. AssertionError for what takes
    too long or too much, or ends the process."""
    for bomb in BOMBS:
        if quick and bomb.is_slow:
            continue
        content = bomb.make()
        words = _apart(bomb.inlet, content)
        told(f"{bomb.inlet:14} {bomb.what:42} {words or 'the process ended'}, {len(content):>8} bytes")
        assert words.endswith("MB"), f"{bomb.inlet}: {bomb.what}: {words}"
        assert int(words.split()[-2]) < MOST_MEGABYTES, f"{bomb.inlet}: {bomb.what}: {words}"


def _apart(inlet: str, content: bytes) -> str:
    left, right = os.pipe()
    if (child := os.fork()) == 0:
        os.write(right, _tried(inlet, content).encode())
        os._exit(0)
    os.close(right)
    with os.fdopen(left) as answer:
        words = answer.read()
    os.waitpid(child, 0)
    return words


def _tried(inlet: str, content: bytes) -> str:
    """Seconds and megabytes, or the reader's own fault."""
    before = _megabytes()
    try:
        one = tried(INLETS[inlet], content)
    except Exception as fault:  # because: it is told to whoever started this process
        return f"{type(fault).__name__}: {str(fault)[:200]}"
    return f"{one.seconds:5.2f} s {_megabytes() - before:4} MB"


def _megabytes() -> int:
    """The most that this process ever had in memory."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024


if __name__ == "__main__":
    try_all(quick="--quick" in sys.argv)
