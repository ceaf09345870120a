"""How often one person may open pages, and do what costs the machine much, by page and API together (ASVS 2.4.1).

Far above what a person does: against programs that run away, and against somebody else at a sign-in left open.
"""

from enum import StrEnum
from typing import Final

from django.conf import settings

from trimops.web.counted import count_one

MINUTE: Final = 60
HOUR: Final = 3600
PAGES: Final = "More pages were asked for in your name than a person reads."


class Cost(StrEnum):
    """What takes seconds of a processor."""

    PLAN = "plan"
    EXPORT = "export"
    PAPER = "paper"


# How many times `COSTLY_RATE` in an hour: a plan thinks for ten seconds, a paper is drawn in some tenth of one.
SHARES: Final = {Cost.PLAN: 1, Cost.EXPORT: 5, Cost.PAPER: 10}
WORDS: Final = {
    Cost.PLAN: "More plans were asked for in your name than anybody reads.",
    Cost.EXPORT: "Tables were taken out in your name too often.",
    Cost.PAPER: "More papers were drawn in your name than anybody reads.",
}


def pages_wait(person: int) -> int:
    """One page more: 0, or the seconds until that person may have another."""
    return _wait(f"pages:{person}", MINUTE, settings.PAGE_RATE)


def cost_wait(cost: Cost, person: int) -> int:
    """The same for something that costs."""
    return _wait(f"{cost}s:{person}", HOUR, settings.COSTLY_RATE * SHARES[cost])


def _wait(what: str, seconds: int, most: int) -> int:
    if not most:
        return 0
    count, left = count_one(what, seconds)
    return left if count > most else 0
