"""How clean a herd is: the order farms are visited in, and how much washing follows.

Lowest risk first is common practice among contractors (the order of farms along a route has no published
source; sick animals last is printed, trade-facts 5.2). The four levels are our own.
"""

from enum import IntEnum


class HygieneLevel(IntEnum):
    """0 is visited first, 3 last; the higher the level, the longer the wash-down after it."""

    CLOSED_CLEAN = 0
    USUAL = 1
    DERMATITIS = 2
    RESTRICTED = 3

    @property
    def label(self) -> str:
        return _LABELS[self]

    @property
    def meaning(self) -> str:
        """One sentence for the farm page."""
        return _MEANINGS[self]


_LABELS = {
    HygieneLevel.CLOSED_CLEAN: "Closed, clean herd",
    HygieneLevel.USUAL: "Usual",
    HygieneLevel.DERMATITIS: "Digital dermatitis active",
    HygieneLevel.RESTRICTED: "Serious infection or restriction",
}
_MEANINGS = {
    HygieneLevel.CLOSED_CLEAN: "Buys nothing in, no foot infection known: go here before any other farm.",
    HygieneLevel.USUAL: "Nothing out of the ordinary known.",
    HygieneLevel.DERMATITIS: "Digital dermatitis is being treated here: cleaner farms come first that day.",
    HygieneLevel.RESTRICTED: (
        "A notifiable or other serious infection, or a movement restriction, is known: last of the day, "
        "and only as the farm, its vet and the local rules allow."
    ),
}
