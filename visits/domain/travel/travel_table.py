"""The drives between all places of a week, each with where its figures come from."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from visits.domain.planning.travel import geodesic_km
from visits.domain.travel.drive import NO_DRIVE, CarLeg, Drive, estimated_drive, road_drive
from visits.domain.travel.place import Place
from visits.domain.travel.travel_figures import TravelFigures
from visits.domain.travel.travel_source import TravelSource

Legs = Mapping[tuple[str, str], CarLeg]
HERE = "-"


@dataclass(frozen=True)
class TravelTable:
    """Square, in the order of `places`. `marks[a][b]` is the source's mark of the drive from a to b, "-" for a to a."""

    places: tuple[str, ...]
    drives: tuple[tuple[Drive, ...], ...]
    marks: tuple[str, ...]

    def as_travel(self) -> dict[str, object]:
        """The `travel` part of a week problem, kind matrix."""
        return {
            "kind": "matrix",
            "places": list(self.places),
            "minutes": [[drive.minutes for drive in row] for row in self.drives],
            "km": [[drive.km for drive in row] for row in self.drives],
        }

    def counts(self) -> dict[TravelSource, int]:
        """How many drives each source gave; sources that gave none are absent."""
        found = {source: sum(row.count(source.mark) for row in self.marks) for source in TravelSource}
        return {source: number for source, number in found.items() if number}


def travel_table(
    places: Sequence[Place], figures: TravelFigures, legs: Legs, source: TravelSource
) -> TravelTable:
    """By road where `legs` (by the places' keys) knows the drive, `source` being who said so; else by estimate.

    Two places on one spot take the minutes of getting away and parking.
    """
    # A key is written out of its place's figures; once a place is enough.
    keys = [place.key for place in places]
    found = [[None if a == b else legs.get((a, b)) for b in keys] for a in keys]
    road, guess = source.mark, TravelSource.ESTIMATE.mark
    marks = [
        "".join(HERE if a == b else road if leg else guess for b, leg in enumerate(row))
        for a, row in enumerate(found)
    ]
    return TravelTable(tuple(place.id for place in places), _drives(places, figures, found), tuple(marks))


def _drives(
    places: Sequence[Place], figures: TravelFigures, found: Sequence[Sequence[CarLeg | None]]
) -> tuple[tuple[Drive, ...], ...]:
    rows: list[list[Drive]] = []
    for a, place in enumerate(places):
        rows.append([])
        for b, other in enumerate(places):
            if a == b:
                rows[a].append(NO_DRIVE)
            elif leg := found[a][b]:
                rows[a].append(road_drive(leg, figures))
            elif b < a and not found[b][a]:
                rows[a].append(rows[b][a])  # an estimate is the same both ways
            else:
                rows[a].append(estimated_drive(straight_km(place, other), figures))
    return tuple(map(tuple, rows))


def straight_km(a: Place, b: Place) -> float:
    """Geodesic kilometres, the same both ways to the last digit."""
    return _measured(*sorted((a.point, b.point)))


# because: a page that looks for room in a week measures the same farms again and again
@lru_cache(maxsize=50_000)
def _measured(one: tuple[float, float], other: tuple[float, float]) -> float:
    return geodesic_km(one, other)
