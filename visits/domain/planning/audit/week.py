"""The week problem as the audit holds it: microseconds, metres, exact fractions of the minor unit."""

from dataclasses import dataclass
from datetime import date, datetime
from fractions import Fraction
from zoneinfo import ZoneInfo

from visits.domain.planning.audit.legs import Leg, Legs
from visits.domain.planning.audit.values import EPOCH, MICROSECOND


@dataclass(frozen=True)
class Window:
    start: int
    end: int


@dataclass(frozen=True)
class MealRule:
    length: int
    earliest: int
    latest: int


@dataclass(frozen=True)
class Shift:
    id: str
    crew: str
    base: str
    start: int
    end: int
    max_work: int | None
    max_cows: int | None
    meal: MealRule | None
    cost_fixed: Fraction
    cost_per_hour: Fraction
    cost_per_km: Fraction


@dataclass(frozen=True)
class Fixed:
    shift: str
    start: int


@dataclass(frozen=True)
class Job:
    id: str
    site: str
    length: int
    cows: int
    windows: tuple[Window, ...]
    crews: frozenset[str] | None
    due: date | None
    late_cost: Fraction
    leave_out_cost: Fraction | None
    fixed: Fixed | None

    def takes(self, crew: str) -> bool:
        """Whether that crew may do it."""
        return self.crews is None or crew in self.crews


@dataclass(frozen=True)
class Week:
    zone: ZoneInfo
    legs: Legs
    hygiene: dict[str, int]
    shifts: dict[str, Shift]
    jobs: dict[str, Job]

    def leg(self, start: str, end: str) -> Leg:
        return self.legs.between(start, end)

    def moment(self, instant: int) -> datetime:
        """The instant on the clock of the business."""
        return (EPOCH + instant * MICROSECOND).astimezone(self.zone)

    def days_late(self, job: Job, start: int) -> int:
        """Whole calendar days from its due day to the day it starts, in the business's zone, or 0."""
        return max(0, (self.moment(start).date() - job.due).days) if job.due else 0

    def shifts_for(self, job: Job) -> list[Shift]:
        """The shifts whose crew may do it."""
        return [shift for shift in self.shifts.values() if job.takes(shift.crew)]
