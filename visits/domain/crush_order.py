"""Who is next in the crush: lame cows first, then re-checks and blocks that are due, then the others asked for.

Lame first: treat as soon as lameness is seen (T15). The rest of the order is common practice, no source.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from visits.domain.mobility import MobilityScale, Urgency, urgency_of

_PRESSES = {Urgency.SAME_DAY: 0, Urgency.SOON: 1, Urgency.NONE: 2}


@dataclass(frozen=True)
class ExpectedCow:
    """A cow on the list of a visit. `due_until`: the last day of what is due on her, None when nothing is."""

    cow_id: int
    number: str
    why: tuple[str, ...]
    scale: MobilityScale | None = None
    score: int | None = None
    due_until: date | None = None

    @property
    def urgency(self) -> Urgency:
        """How soon she is to be looked at, by her own score."""
        if self.scale is None or self.score is None:
            return Urgency.NONE
        return urgency_of(self.scale, self.score)

    @property
    def is_lame(self) -> bool:
        return self.urgency is not Urgency.NONE


def crush_order(cows: Iterable[ExpectedCow]) -> list[ExpectedCow]:
    """The cows in the order in which they are best brought; of two alike, the one due longer, then by number.

    Scores of two scales are never compared: only how soon each wants a look.
    """
    return sorted(cows, key=_place)


def _place(cow: ExpectedCow) -> tuple[int, int, date, str, int]:
    is_due = cow.due_until is not None
    return (
        _PRESSES[cow.urgency],
        0 if is_due else 1,
        cow.due_until or date.max,
        cow.number.zfill(20),
        cow.cow_id,
    )
