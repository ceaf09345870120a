"""From degrees to millimetres on the map.

Equirectangular with the middle latitude as the true one: x = R cos(middle) dlon, y = R dlat, on a sphere of the Earth's
mean radius (6,371.0088 km, IUGG). Against geodesics on WGS 84 distances are right to one part in a hundred over 40 km
and to two over 90 km, up to latitude 60: what a scale bar can show. Lengths of drives are never taken from here.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from trimops.paper.drawing import Point

EARTH_KM = 6371.0088
_BAR_KM = (0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500)
_LEAST_KM = 1.0


@dataclass(frozen=True)
class Projection:
    """Holds the middle of the map in degrees, where it lies in mm, and mm to the km."""

    lat: float
    lon: float
    middle: Point
    mm_per_km: float

    def point(self, lat: float, lon: float) -> Point:
        """Where a place lies on the drawing, north up."""
        east, north = _km_from(self.lat, self.lon, lat, lon)
        return self.middle[0] + east * self.mm_per_km, self.middle[1] - north * self.mm_per_km

    def scale_bar(self, longest: float) -> tuple[float, float]:
        """The longest round length (km) whose bar is at most `longest` mm, and that bar's length in mm."""
        fitting = [km for km in _BAR_KM if km * self.mm_per_km <= longest] or [_BAR_KM[0]]
        return fitting[-1], fitting[-1] * self.mm_per_km


def projection_of(places: Sequence[tuple[float, float]], corner: Point, size: Point) -> Projection:
    """Fits (lat, lon) pairs into a frame of `size` mm whose top left is `corner`; no places: a kilometre about 0, 0."""
    lats = [lat for lat, _ in places] or [0.0]
    lons = _unwrapped([lon for _, lon in places] or [0.0])
    lat, lon = (min(lats) + max(lats)) / 2, (min(lons) + max(lons)) / 2
    east, north = _km_from(lat, lon, max(lats), max(lons))
    scale = min(size[0] / max(2 * east, _LEAST_KM), size[1] / max(2 * north, _LEAST_KM))
    return Projection(lat, lon, (corner[0] + size[0] / 2, corner[1] + size[1] / 2), scale)


def _km_from(lat0: float, lon0: float, lat: float, lon: float) -> tuple[float, float]:
    degree = math.radians(1) * EARTH_KM
    turn = (lon - lon0 + 180) % 360 - 180
    return turn * degree * math.cos(math.radians(lat0)), (lat - lat0) * degree


def _unwrapped(lons: Sequence[float]) -> list[float]:
    """Longitudes on one side of the date line, so that 179 and -179 are two degrees apart."""
    return [lons[0] + ((lon - lons[0] + 180) % 360 - 180) for lon in lons]
