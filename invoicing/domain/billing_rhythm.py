"""How often a farm is billed."""

from datetime import date, timedelta
from enum import StrEnum


class BillingRhythm(StrEnum):
    """One invoice for what."""

    VISIT = "visit"
    MONTH = "month"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    BillingRhythm.VISIT: "Each visit",
    BillingRhythm.MONTH: "Each month",
}


def month_of(day: date) -> tuple[date, date]:
    """First and last day of the month that holds `day`."""
    first = day.replace(day=1)
    return first, (first + timedelta(days=31)).replace(day=1) - timedelta(days=1)
