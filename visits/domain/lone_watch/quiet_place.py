"""Whether a farm is known to have no network."""

from collections.abc import Iterable, Sequence
from datetime import timedelta

LATE = timedelta(minutes=30)
"""What arrives that long after it was noted has waited for a network."""
MOST_VISITS = 3


def is_late_visit(waits: Sequence[timedelta]) -> bool:
    """Of one visit: how long each of its writings waited on the phone. Late: at least half waited long."""
    return bool(waits) and 2 * sum(wait > LATE for wait in waits) >= len(waits)


def is_quiet_place(visits: Iterable[Sequence[timedelta]]) -> bool:
    """By the newest visits, newest first, at most three that say anything: the greater part of them came in late."""
    said = [is_late_visit(waits) for waits in visits if waits][:MOST_VISITS]
    return bool(said) and 2 * sum(said) > len(said)
