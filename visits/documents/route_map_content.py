"""What a map of a route shows: places in degrees (WGS 84), and the order they are driven in."""

from dataclasses import dataclass
from typing import Literal

from trimops.paper.colours import Meaning

PlaceKind = Literal["base", "farm"]


@dataclass(frozen=True)
class MapPlace:
    """A base or a farm. `lat` -85 to 85, `lon` -180 to 180."""

    key: str
    name: str
    lat: float
    lon: float
    kind: PlaceKind = "farm"
    meaning: Meaning = Meaning.PLANNED


@dataclass(frozen=True)
class MapRoute:
    """One trimmer's route: keys of places in the order driven, the base usually first and last."""

    name: str
    stops: tuple[str, ...]


@dataclass(frozen=True)
class RouteMap:
    """Places and at most a few routes. Places on no route are drawn small, for bearings."""

    title: str
    places: tuple[MapPlace, ...]
    routes: tuple[MapRoute, ...] = ()

    def numbered(self) -> dict[str, str]:
        """The number each farm wears: its turn on its route; with several routes a letter goes before it (A1)."""
        kinds = {place.key: place.kind for place in self.places}
        found: dict[str, str] = {}
        for order, route in enumerate(self.routes):
            letter = chr(ord("A") + order) if len(self.routes) > 1 else ""
            turn = 0
            for key in route.stops:
                if kinds[key] == "farm" and key not in found:
                    turn += 1
                    found[key] = f"{letter}{turn}"
        return found
