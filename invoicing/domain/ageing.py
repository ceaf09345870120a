"""How old open amounts are: whole days past the day they were due."""

from datetime import date, timedelta
from enum import StrEnum


class Age(StrEnum):
    """Five bands, from not yet due to over ninety days."""

    NOT_YET_DUE = "not_yet_due"
    TO_30 = "to_30"
    TO_60 = "to_60"
    TO_90 = "to_90"
    OVER_90 = "over_90"

    @property
    def label(self) -> str:
        return _LABELS[self]


_LABELS = {
    Age.NOT_YET_DUE: "Not yet due",
    Age.TO_30: "1 to 30 days",
    Age.TO_60: "31 to 60 days",
    Age.TO_90: "61 to 90 days",
    Age.OVER_90: "Over 90 days",
}
_DAYS = {Age.TO_30: (1, 30), Age.TO_60: (31, 60), Age.TO_90: (61, 90)}


def age_of(days: int) -> Age:
    """Of what was due so many days ago: what is due today is not yet late."""
    if days <= 0:
        return Age.NOT_YET_DUE
    return next((age for age, (_, last) in _DAYS.items() if days <= last), Age.OVER_90)


def due_days(age: Age, today: date) -> tuple[date | None, date | None]:
    """The first and the last day on which what is of that age was due, both included; None: open."""
    if age is Age.NOT_YET_DUE:
        return today, None
    if age is Age.OVER_90:
        return None, today - timedelta(days=91)
    first, last = _DAYS[age]
    return today - timedelta(days=last), today - timedelta(days=first)
