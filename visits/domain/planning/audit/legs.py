"""The drive from one place to another, by table or by estimate."""

from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from typing import Protocol

from geographiclib.geodesic import Geodesic

from visits.domain.planning.audit.values import MINUTE


@dataclass(frozen=True)
class Leg:
    """One drive: `time` in microseconds, `metres` whole, the grain of the contract's distances."""

    time: int
    metres: int


class Legs(Protocol):
    def between(self, start: str, end: str) -> Leg: ...


NO_DRIVE = Leg(0, 0)


@dataclass(frozen=True)
class TableLegs:
    """Drives read off a table; a place to itself is 0 whatever the table says."""

    places: dict[str, int]
    times: list[list[int]]
    metres: list[list[Fraction]]

    def between(self, start: str, end: str) -> Leg:
        if start == end:
            return NO_DRIVE
        row, column = self.places[start], self.places[end]
        return Leg(self.times[row][column], to_metre(self.metres[row][column]))


@dataclass(frozen=True)
class EstimatedLegs:
    """Drives by the shortest line on WGS 84 (Karney 2013, as geographiclib computes it) times `circuity`.

    `points`: degrees north and east; `kmh`: km an hour; `per_leg`: microseconds added to each drive.
    """

    points: dict[str, tuple[float, float]]
    circuity: Fraction
    kmh: Fraction
    per_leg: int

    def between(self, start: str, end: str) -> Leg:
        if start == end:
            return NO_DRIVE
        metres = straight_metres(self.points[start], self.points[end]) * self.circuity
        return Leg(round(metres / 1000 / self.kmh * 60 * MINUTE) + self.per_leg, to_metre(metres))


@lru_cache(maxsize=100_000)
def straight_metres(start: tuple[float, float], end: tuple[float, float]) -> Fraction:
    """The shortest line between two points; kept, because a week asks for the same pairs thousands of times."""
    line: dict[str, float] = Geodesic.WGS84.Inverse(*start, *end)
    return Fraction(line["s12"])


def to_metre(metres: Fraction) -> int:
    """To the whole metre, half a metre up."""
    return (2 * metres.numerator + metres.denominator) // (2 * metres.denominator)
