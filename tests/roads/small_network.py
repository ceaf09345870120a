"""A small road network of our own making, as a file for a road engine and as a graph for ourselves.

`python -m tests.roads.small_network FILE.osm` writes it. Invented: a bent grid of lanes with two faster roads
through it, a one-way lane, and an island that no road leads to.
"""

import random
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from xml.sax.saxutils import quoteattr

import numpy
from pyproj import Geod
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import dijkstra

SIDE = 9
SOUTH_WEST = (54.0, -2.6)
STEP = (0.018, 0.030)
ISLAND = (54.4, -2.5)
EARTH = Geod(ellps="WGS84")


@dataclass(frozen=True)
class Road:
    """Nodes in order, by number, and what may be driven on it."""

    nodes: tuple[int, ...]
    kmh: int
    is_one_way: bool = False


@dataclass(frozen=True)
class Network:
    """Nodes (latitude, longitude) and the roads between them."""

    nodes: tuple[tuple[float, float], ...]
    roads: tuple[Road, ...]

    def stretches(self) -> Iterator[tuple[int, int, float, float]]:
        """(from, to, seconds, metres) of each piece of road in each direction that is allowed."""
        for road in self.roads:
            for a, b in zip(road.nodes, road.nodes[1:], strict=False):
                metres = EARTH.inv(*reversed(self.nodes[a]), *reversed(self.nodes[b]))[2]
                yield a, b, metres * 3.6 / road.kmh, metres
                if not road.is_one_way:
                    yield b, a, metres * 3.6 / road.kmh, metres

    def shortest(self) -> tuple[numpy.ndarray, numpy.ndarray]:
        """Seconds and metres of the quickest way between all nodes, by SciPy's Dijkstra; inf where there is none."""
        size = len(self.nodes)
        seconds = {(a, b): s for a, b, s, _ in self.stretches()}
        metres = {(a, b): m for a, b, _, m in self.stretches()}
        at = tuple(zip(*seconds, strict=True))
        quickest, before = dijkstra(
            csr_matrix((list(seconds.values()), at), shape=(size, size)), return_predecessors=True
        )
        lengths = [[_along(before[a], a, b, metres) for b in range(size)] for a in range(size)]
        return quickest, numpy.array(lengths)

    def as_osm(self) -> str:
        """OpenStreetMap XML."""
        made = 'version="1" timestamp="2026-01-01T00:00:00Z"'
        nodes = [
            f'<node id="{n + 1}" {made} lat="{lat:.7f}" lon="{lon:.7f}"/>'
            for n, (lat, lon) in enumerate(self.nodes)
        ]
        ways = [f'<way id="{n + 1}" {made}>{_way(road)}</way>' for n, road in enumerate(self.roads)]
        return "\n".join(['<osm version="0.6" generator="trimops tests">', *nodes, *ways, "</osm>"])


def small_network() -> Network:
    """The same each time."""
    chance = random.Random(20261125)
    nodes = [_bent(row, column, chance) for row in range(SIDE) for column in range(SIDE)]
    island = len(nodes)
    nodes += [ISLAND, (ISLAND[0] + 0.01, ISLAND[1])]
    across = [Road(tuple(row * SIDE + c for c in range(SIDE)), 64 if row == 4 else 30) for row in range(SIDE)]
    along = [
        Road(tuple(r * SIDE + column for r in range(SIDE)), 50 if column == 4 else 27)
        for column in range(SIDE)
    ]
    across[2] = Road(across[2].nodes, 30, is_one_way=True)
    return Network(tuple(nodes), (*across, *along, Road((island, island + 1), 30)))


def _bent(row: int, column: int, chance: random.Random) -> tuple[float, float]:
    lat = SOUTH_WEST[0] + (row + chance.uniform(-0.3, 0.3)) * STEP[0]
    lon = SOUTH_WEST[1] + (column + chance.uniform(-0.3, 0.3)) * STEP[1]
    return round(lat, 6), round(lon, 6)


def _along(before: numpy.ndarray, a: int, b: int, metres: dict[tuple[int, int], float]) -> float:
    length = 0.0
    while b != a:
        if before[b] < 0:
            return float("inf")
        length += metres[int(before[b]), b]
        b = int(before[b])
    return length


def _way(road: Road) -> str:
    tags = {"highway": "unclassified", "plain_speed": str(road.kmh)}
    if road.is_one_way:
        tags["oneway"] = "yes"
    words = [f'<nd ref="{node + 1}"/>' for node in road.nodes]
    return "".join(words + [f"<tag k={quoteattr(k)} v={quoteattr(v)}/>" for k, v in tags.items()])


if __name__ == "__main__":
    Path(sys.argv[1]).write_text(small_network().as_osm(), encoding="utf-8")
