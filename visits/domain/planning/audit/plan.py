"""A week plan as printed: what it claims, before anything is believed."""

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True)
class ToldStop:
    path: str
    job: str
    arrive: int
    start: int
    finish: int
    travel: int
    metres: Fraction
    days_late: int


@dataclass(frozen=True)
class ToldMeal:
    path: str
    start: int
    end: int


@dataclass(frozen=True)
class ToldShift:
    path: str
    id: str
    leave: int
    back: int
    work: int
    metres: Fraction
    cows: int
    meal: ToldMeal | None
    stops: tuple[ToldStop, ...]


@dataclass(frozen=True)
class LeftOut:
    path: str
    job: str
    reason: str


@dataclass(frozen=True)
class Cost:
    total: Fraction
    shifts: Fraction
    lateness: Fraction
    left_out: Fraction


@dataclass(frozen=True)
class Plan:
    cost: Cost
    bound: Fraction | None
    shifts: tuple[ToldShift, ...]
    left_out: tuple[LeftOut, ...]
