"""The travel part of a week problem, faults noted by path."""

from fractions import Fraction
from typing import TypeVar

from visits.domain.planning.audit.legs import EstimatedLegs, Legs, TableLegs
from visits.domain.planning.audit.part import Part
from visits.domain.planning.audit.values import AMOUNT, MINUTES, TEXT, Kind

T = TypeVar("T")
Points = dict[str, tuple[float, float]]
TABLE_KEYS = "kind places minutes km"
ESTIMATE_KEYS = "kind circuity kmh minutes_per_leg"


def read_travel(problem: Part, points: Points) -> Legs:
    """The drives of a week. `points`: degrees north and east of each base and site."""
    table = problem.part("travel", TABLE_KEYS + " " + ESTIMATE_KEYS)
    kind = table.need("kind", TEXT)
    if kind == "matrix":
        return _table(problem.part("travel", TABLE_KEYS), points)
    if kind == "estimate":
        return _estimate(problem.part("travel", ESTIMATE_KEYS), points)
    if table.has("kind"):
        table.wrong("kind", "is neither matrix nor estimate")
    return _no_travel()


def _no_travel() -> Legs:
    return EstimatedLegs({}, Fraction(1), Fraction(1), 0)


def _table(travel: Part, points: Points) -> Legs:
    names = travel.line("places", TEXT)
    places = {name: place for place, name in enumerate(names)}
    if len(places) < len(names):
        travel.wrong("places", "names a place twice")
    for missing in sorted(points.keys() - places.keys()):
        travel.wrong("places", f"does not name {missing}")
    km = [[distance * 1000 for distance in row] for row in _square(travel, "km", AMOUNT, len(names))]
    return TableLegs(places, _square(travel, "minutes", MINUTES, len(names)), km)


def _square(travel: Part, key: str, kind: Kind[T], size: int) -> list[list[T]]:
    rows = travel.rows(key, kind)
    if len(rows) != size or any(len(row) != size for row in rows):
        travel.wrong(key, f"is not {size} rows of {size}")
    return rows


def _estimate(travel: Part, points: Points) -> Legs:
    circuity, kmh = travel.need("circuity", AMOUNT), travel.need("kmh", AMOUNT)
    for key, value in (("circuity", circuity), ("kmh", kmh)):
        if travel.has(key) and value == 0:
            travel.wrong(key, "is 0")
    return EstimatedLegs(points, circuity, kmh or Fraction(1), travel.need("minutes_per_leg", MINUTES))
