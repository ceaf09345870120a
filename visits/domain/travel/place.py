"""A place to drive from or to, known by where it is: one that moves is another place."""

from dataclasses import dataclass
from functools import cached_property

GRAIN = 5
"""Decimals of a degree that tell places apart: 0.00001 degrees are 1.1 m."""


@dataclass(frozen=True)
class Place:
    """A van's base or a farm; `id` is what the week problem calls it."""

    id: str
    latitude: float
    longitude: float

    @cached_property
    def key(self) -> str:
        """`"54.21000,-2.31000"`: under this the drives from and to here are kept."""
        # Adding 0 turns a rounded -0.0 into 0.0, which is the same place.
        return ",".join(f"{round(degrees, GRAIN) + 0:.{GRAIN}f}" for degrees in self.point)

    @property
    def point(self) -> tuple[float, float]:
        return self.latitude, self.longitude


def point_of(key: str) -> tuple[float, float]:
    """The (latitude, longitude) that a place's key stands for."""
    latitude, longitude = key.split(",")
    return float(latitude), float(longitude)
