"""The timetable's sign of life: whoever keeps it leaves one at each tick, whoever watches reads it.

With REDIS_URL it lies in the cache that all processes share, else in a file beside the data. It is not in the
database: a row written every ten seconds for good would be the busiest of all.
"""

from datetime import UTC, datetime
from pathlib import Path

from django.conf import settings
from django.core.cache import cache

KEY = "timetable-beat"
FILE = "timetable-beat"


def note_beat(at: datetime) -> None:
    """The timetable was kept at the aware instant `at`."""
    if settings.REDIS_URL:
        cache.set(KEY, at.timestamp(), timeout=None)
    else:
        _file().write_text(f"{at.timestamp()}")


def last_beat() -> datetime | None:
    """When it was kept last, aware and in UTC; None where nobody has said so yet."""
    said = cache.get(KEY) if settings.REDIS_URL else _read()
    return None if said is None else datetime.fromtimestamp(said, UTC)


def _read() -> float | None:
    try:
        return float(_file().read_text())
    except (FileNotFoundError, ValueError):
        # Nobody wrote it yet, or is writing it now.
        return None


def _file() -> Path:
    return Path(settings.DATA_DIR) / FILE
