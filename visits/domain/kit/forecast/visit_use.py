"""What is known of a visit that was made, and of one that is booked, as far as one consumable is concerned."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from visits.domain.visit_states import VisitReason

Size = tuple[Decimal, int]
"""(what a cow used, how many cows used just so much)."""


@dataclass(frozen=True)
class VisitUse:
    """A visit of the past and what it used of one consumable, in its unit.

    `routine` and `corrective` are cows really seen: as many corrective ones as were booked (lame or re-checked),
    the others routine. `sizes` tells the cows that used any; None where only the sum is known. What `used` holds
    beyond them belongs to the visit as a whole: wash-downs, recipes per visit, corrections by hand (below nought
    too). `booked` is (heads, of these corrective) as told beforehand, `notice` the days from being booked to the day
    of the visit; None where not known. A visit that was booked and called off is not `is_made`.
    """

    farm: int
    day: date
    routine: int
    corrective: int
    used: Decimal
    reason: VisitReason = VisitReason.ROUTINE
    sizes: tuple[Size, ...] | None = None
    booked: tuple[int, int] | None = None
    notice: int | None = None
    is_made: bool = True

    @property
    def cows(self) -> int:
        return self.routine + self.corrective


@dataclass(frozen=True)
class BookedVisit:
    """A visit still to come: `heads` cows are told, of these `corrective` lame or re-checked."""

    farm: int
    day: date
    van: int | None
    heads: int
    corrective: int
    reason: VisitReason
