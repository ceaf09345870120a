"""A week problem as the solver holds it: whole deciseconds since 1970 (UTC), whole metres, indexes.

Shapes follow the week problem contract (`trimops-week-problem/1`). Money is a number of the minor unit.
"""

from dataclasses import dataclass
from datetime import date
from zoneinfo import ZoneInfo


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of time, deciseconds since 1970-01-01 UTC, both ends included."""

    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Meal:
    """A break of `length` deciseconds that begins between `earliest` and `latest`."""

    length: int
    earliest: int
    latest: int


@dataclass(frozen=True, slots=True)
class Fixed:
    """A promise: this shift (index) at this start."""

    shift: int
    start: int


@dataclass(frozen=True, slots=True)
class Shift:
    """One crew's day out of one base. `place` is an index into the travel tables."""

    id: str
    crew: str
    place: int
    start: int
    end: int
    max_work: int | None
    max_cows: int | None
    meal: Meal | None
    cost_fixed: float
    cost_per_hour: float
    cost_per_km: float


@dataclass(frozen=True, slots=True)
class Job:
    """One visit to plan. `crews` None means everyone; `leave_out_cost` None means it must be planned."""

    id: str
    place: int
    hygiene: int
    length: int
    cows: int
    windows: tuple[Span, ...]
    crews: frozenset[str] | None
    due: date | None
    late_cost_per_day: float
    leave_out_cost: float | None
    fixed: Fixed | None


@dataclass(frozen=True, slots=True)
class Travel:
    """Travel between places by index: deciseconds and metres; 0 between a place and itself."""

    times: tuple[tuple[int, ...], ...]
    metres: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class WeekProblem:
    """Everything the solver needs. `notes` say where a figure was rounded on reading."""

    zone: ZoneInfo
    travel: Travel
    shifts: tuple[Shift, ...]
    jobs: tuple[Job, ...]
    notes: tuple[str, ...] = ()
