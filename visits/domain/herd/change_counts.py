"""What the flag of change is told: counts of one farm, period after period, and the rule it goes by."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class Counting(StrEnum):
    """What the cases are counted over."""

    OF_COWS_SEEN = "of_cows_seen"
    OVER_COW_YEARS = "over_cow_years"

    @property
    def label(self) -> str:
        return self.value.replace("_", " ")


@dataclass(frozen=True)
class Counted:
    """`cases` from `start` on and before `end`; `exposure` is cows seen (each once) or cow-years."""

    start: date
    end: date
    cases: int
    exposure: float

    @property
    def rate(self) -> float | None:
        """Cases for each cow seen, or for each cow-year."""
        return self.cases / self.exposure if self.exposure > 0 else None


@dataclass(frozen=True)
class ChangeRule:
    """When a change is flagged.

    `chance`: how unlikely the newest periods must be (one-sided, mid-P) if nothing had changed. `window`: how
    many periods back a change may have begun. `least_past`: how many periods make a past to compare with.
    `least_cases`: how many cases there must be in all. `draws`: how many stable histories the stated rate of
    false alarms is measured on.
    """

    chance: float = 0.001
    window: int = 8
    least_past: int = 2
    least_cases: int = 5
    draws: int = 2000


USUAL_CHANGE_RULE = ChangeRule()
