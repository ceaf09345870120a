"""A trim whose row is stored, with what it says and on which day."""

from dataclasses import dataclass
from datetime import date, datetime

from visits.domain.crush_entry import CowEntry
from visits.models import Trim


@dataclass(frozen=True)
class StoredCow:
    """`entry` is empty for a cow that was taken back; `day` is the business's day of the trim.

    `since`: from when on the words of other visits about the cow may rest on this trim, as it was or as it is.
    """

    trim: Trim
    entry: CowEntry
    day: date
    since: datetime


def in_order(cows: list[StoredCow]) -> list[StoredCow]:
    """As they stood in the crush."""
    return sorted(cows, key=lambda cow: (cow.trim.recorded_at, cow.trim.pk))
