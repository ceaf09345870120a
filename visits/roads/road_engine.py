"""What every road map answers, whoever it is."""

from collections.abc import Sequence
from typing import Protocol

from visits.domain.travel.drive import CarLeg
from visits.domain.travel.travel_source import TravelSource

Point = tuple[float, float]
"""(latitude, longitude), degrees."""

CarTable = tuple[tuple[CarLeg | None, ...], ...]
"""A row for each place driven from; None where the map knows no road."""

SNAP_METRES = 1000
"""A place further than this from any road on the map is off the map."""


class RoadsUnavailable(Exception):
    """No drives could be had; the message says why, in words for the owner of the business."""


class RoadEngine(Protocol):
    """A road map with a way to ask it."""

    @property
    def source(self) -> TravelSource: ...

    @property
    def key(self) -> str:
        """Names the map: what one map said is not taken for another's. At most 40 characters."""

    def table(self, sources: Sequence[Point], destinations: Sequence[Point], seconds: float) -> CarTable:
        """Every drive from each source to each destination, in at most about `seconds`; RoadsUnavailable."""
