"""Which road map this installation asks, or why none."""

from dataclasses import dataclass

from django.conf import settings

from visits.domain.travel.travel_source import TravelSource
from visits.roads.chosen_engine import chosen_engine
from visits.roads.road_engine import RoadEngine, RoadsUnavailable


@dataclass(frozen=True)
class RoadsInUse:
    """`engine` is None where drives are estimated; `fault` says so where a road map was meant but cannot be used."""

    engine: RoadEngine | None
    fault: str = ""

    @property
    def source(self) -> TravelSource:
        return self.engine.source if self.engine else TravelSource.ESTIMATE


def roads_in_use() -> RoadsInUse:
    """By the settings of the installation."""
    try:
        return RoadsInUse(chosen_engine(file=settings.ROADS_FILE, address=settings.ROADS_URL))
    except RoadsUnavailable as fault:
        return RoadsInUse(None, str(fault))
