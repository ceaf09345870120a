"""The drive between any two places of a business, as planning reckons it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from farms.models import Farm
from trimops.kernel.scope import Scope
from visits.domain.travel.drive import CarLeg, estimated_drive, road_drive
from visits.domain.travel.missing_blocks import Pair
from visits.domain.travel.place import Place
from visits.domain.travel.travel_figures import TravelFigures
from visits.domain.travel.travel_table import straight_km
from visits.models import Van
from visits.selectors.road_legs import known_legs
from visits.selectors.roads_in_use import roads_in_use


@dataclass(frozen=True)
class ReckonedDrives:
    """By road where that is known, else by estimate."""

    figures: TravelFigures
    legs: Mapping[Pair, CarLeg]

    def minutes(self, a: Place, b: Place) -> float:
        """0 from a place to itself."""
        if a.key == b.key:
            return 0.0
        leg = self.legs.get((a.key, b.key))
        return (
            road_drive(leg, self.figures) if leg else estimated_drive(straight_km(a, b), self.figures)
        ).minutes

    def metres(self, a: Place, b: Place) -> float:
        """0 from a place to itself; not rounded."""
        if a.key == b.key:
            return 0.0
        leg = self.legs.get((a.key, b.key))
        return leg.metres if leg else straight_km(a, b) * 1000 * self.figures.circuity

    def knows_road(self, a: Place, b: Place) -> bool:
        """Whether the way is told by a road map, or there is none to go."""
        return a.key == b.key or (a.key, b.key) in self.legs


def reckoned_drives(scope: Scope, figures: TravelFigures, places: Sequence[Place]) -> ReckonedDrives:
    """For drives between these places; at most one query."""
    return ReckonedDrives(figures, known_legs(scope, roads_in_use().engine, places))


def base_of(van: Van) -> Place:
    return Place(f"van-{van.pk}", float(van.base_latitude), float(van.base_longitude))


def place_of(farm: Farm) -> Place:
    return Place(f"farm-{farm.pk}", float(farm.latitude), float(farm.longitude))
