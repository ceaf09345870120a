"""A week plan as the solver hands it over: deciseconds, metres, money, ids."""

from dataclasses import dataclass, field
from zoneinfo import ZoneInfo

from visits.domain.planning.problem import Span


@dataclass(frozen=True, slots=True)
class Stop:
    """One job done: instants in deciseconds since 1970, `travel` the drive just before `arrive`."""

    job: str
    arrive: int
    start: int
    finish: int
    travel: int
    metres: int
    days_late: int


@dataclass(frozen=True, slots=True)
class PlannedShift:
    """A used shift."""

    id: str
    leave: int
    back: int
    metres: int
    cows: int
    meal: Span | None
    stops: tuple[Stop, ...]


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A job nobody does, why, and the same in one sentence."""

    job: str
    reason: str
    detail: str


@dataclass(frozen=True, slots=True)
class PlanCost:
    """Money of the minor unit."""

    shifts: float = 0.0
    lateness: float = 0.0
    left_out: float = 0.0

    @property
    def total(self) -> float:
        """The whole cost."""
        return self.shifts + self.lateness + self.left_out


@dataclass(frozen=True, slots=True)
class WeekPlan:
    """The plan of a week. `bound` is a proven lower bound on the cost, or None."""

    zone: ZoneInfo
    engine: str
    seed: int
    seconds: float
    cost: PlanCost
    shifts: tuple[PlannedShift, ...]
    left_out: tuple[LeftOut, ...]
    bound: float | None = None
    notes: tuple[str, ...] = field(default=())
