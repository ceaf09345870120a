"""Which calving on file a told one is: the same, put right, or a new one."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

# Two calvings of one cow nearer than this are one told twice or put right: a calf is carried for about 280 days
# (common practice, no source); the rest is room for one that came too early.
NEAREST_CALVINGS_DAYS = 200


@dataclass(frozen=True)
class KnownCalving:
    """A calving on file by its key."""

    id: int
    day: date
    lactation: int | None = None


def calving_meant(day: date, lactation: int | None, known: Sequence[KnownCalving]) -> KnownCalving | None:
    """The calving on file that is meant by one on `day`; None when it is a new one.

    The same day first, then the nearest within 200 days, then the one of the same number (a day that was wrong
    by a year).
    """
    by_nearness = sorted(known, key=lambda calving: (abs((calving.day - day).days), calving.id))
    if by_nearness and abs((by_nearness[0].day - day).days) < NEAREST_CALVINGS_DAYS:
        return by_nearness[0]
    if lactation is None:
        return None
    return next((calving for calving in by_nearness if calving.lactation == lactation), None)
