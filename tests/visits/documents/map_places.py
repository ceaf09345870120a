"""An invented valley."""

import random

from trimops.paper.colours import Meaning
from visits.documents.route_map_content import MapPlace, MapRoute, RouteMap

NAMES = (
    "High Thornbeck",
    "Gwern-y-Ŵyl & Sons",
    "Low Moss",
    "Skelder Grange",
    "Over Fell",
    "Harrow Side",
    "Cold Keld",
)


def valley(seed: int = 4, others: int = 20) -> tuple[MapPlace, ...]:
    """A yard, seven named farms and `others` more within about 15 km."""
    draw = random.Random(seed)

    def near() -> tuple[float, float]:
        return 54.21 + draw.uniform(-0.12, 0.14), -2.31 + draw.uniform(-0.2, 0.2)

    farms = [MapPlace(f"f{i}", name, *near(), "farm", list(Meaning)[i % 4]) for i, name in enumerate(NAMES)]
    more = [MapPlace(f"o{i}", f"Farm {i}", *near()) for i in range(others)]
    return (MapPlace("yard", "Yard", 54.21, -2.31, "base"), *farms, *more)


ANN = MapRoute("Ann", ("yard", "f0", "f1", "f2", "f3", "yard"))
BEN = MapRoute("Ben", ("yard", "f4", "f5", "f6", "yard"))
ONE = RouteMap("Tuesday: 4 farms", valley(), (ANN,))
TWO = RouteMap("Tuesday: 7 farms", valley(), (ANN, BEN))
