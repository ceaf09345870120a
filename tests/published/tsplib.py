"""TSPLIB's travelling-salesman instances, and the same as week problems.

Source of format and distance rules: G. Reinelt, TSPLIB, ORSA Journal on Computing 3 (1991) 376-384, and its
description of EUC_2D, GEO and explicit weights. As a week: city 1 is the base, one shift lasts the whole day, every
window is the whole day, a unit is one kilometre; it also takes a tenth of a minute, so that near stays near.
"""

from dataclasses import dataclass
from math import acos, cos, hypot
from pathlib import Path

from tests.published.solomon import FOLDER
from tests.published.week_document import clock, matrix, week_document

FILES = ("burma14", "gr24", "bays29", "eil51", "berlin52", "st70")
WITH_TOUR = ("gr24", "bays29", "eil51", "berlin52", "st70")
PI, EARTH = 3.141592, 6378.388
"""The figures of the description, not better ones: the published lengths rest on them."""
DAY = 24 * 60


@dataclass(frozen=True)
class Cities:
    """`lengths[a][b]` in whole units, from city a + 1 to city b + 1."""

    name: str
    spots: list[tuple[float, float]]
    lengths: list[list[int]]


def read_cities(name: str) -> Cities:
    head, parts = sections(FOLDER / "tsplib" / f"{name}.tsp")
    size = int(head["DIMENSION"])
    numbers = [float(word) for word in parts.get("NODE_COORD_SECTION", parts.get("DISPLAY_DATA_SECTION", []))]
    spots = [(numbers[at + 1], numbers[at + 2]) for at in range(0, 3 * size, 3)] if numbers else []
    if head["EDGE_WEIGHT_TYPE"] == "EXPLICIT":
        weights = [int(word) for word in parts["EDGE_WEIGHT_SECTION"]]
        return Cities(name, spots or [(0, 0)] * size, explicit(head["EDGE_WEIGHT_FORMAT"], size, weights))
    rule = {"EUC_2D": plane, "GEO": globe}[head["EDGE_WEIGHT_TYPE"]]
    return Cities(name, spots, [[0 if a == b else rule(a, b) for b in spots] for a in spots])


def sections(path: Path) -> tuple[dict[str, str], dict[str, list[str]]]:
    """The `KEY: value` lines of a file, and the words of each section."""
    head: dict[str, str] = {}
    parts: dict[str, list[str]] = {}
    words: list[str] = []
    for line in path.read_text().splitlines():
        key, colon, value = line.partition(":")
        if line.strip() == "EOF":
            break
        if line.strip().endswith("_SECTION"):
            words = parts[line.strip()] = []
        elif colon and not parts:
            head[key.strip()] = value.strip()
        else:
            words += line.split()
    return head, parts


def explicit(form: str, size: int, weights: list[int]) -> list[list[int]]:
    if form == "FULL_MATRIX":
        return [weights[row * size : (row + 1) * size] for row in range(size)]
    if form != "LOWER_DIAG_ROW":
        raise ValueError(f"{form} is not read here")
    start = [row * (row + 1) // 2 for row in range(size)]
    return [[weights[start[max(a, b)] + min(a, b)] for b in range(size)] for a in range(size)]


def plane(one: tuple[float, float], other: tuple[float, float]) -> int:
    """EUC_2D: to the nearest whole number."""
    return int(hypot(one[0] - other[0], one[1] - other[1]) + 0.5)


def globe(one: tuple[float, float], other: tuple[float, float]) -> int:
    """GEO: coordinates are degrees and minutes (DDD.MM) on a sphere."""
    (lat_a, lon_a), (lat_b, lon_b) = (tuple(radians(each) for each in place) for place in (one, other))
    q1, q2, q3 = cos(lon_a - lon_b), cos(lat_a - lat_b), cos(lat_a + lat_b)
    return int(EARTH * acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1)


def radians(coordinate: float) -> float:
    degrees = int(coordinate)
    return PI * (degrees + 5 * (coordinate - degrees) / 3) / 180


def read_tour(name: str) -> list[int]:
    """The published tour as indexes, city 1 (index 0) first."""
    _, parts = sections(FOLDER / "tsplib" / f"{name}.opt.tour")
    tour = [int(word) - 1 for word in parts["TOUR_SECTION"] if word != "-1"]
    first = tour.index(0)
    return tour[first:] + tour[:first]


def tour_length(cities: Cities, tour: list[int]) -> int:
    return sum(cities.lengths[a][b] for a, b in zip(tour, [*tour[1:], tour[0]], strict=True))


def tour_week(cities: Cities) -> dict:
    whole_day = {"start": clock(0), "end": clock(DAY)}
    size = range(len(cities.lengths))
    minutes = [[cities.lengths[a][b] / 10 for b in size] for a in size]
    shift = {"id": "v1", "crew": "crew1", "base": "p0", **whole_day, "cost_per_km": 1}
    return week_document(
        spots=[(x / 10, y / 10) for x, y in cities.spots],
        travel=matrix(minutes, [[float(cities.lengths[a][b]) for b in size] for a in size]),
        shifts=[shift],
        jobs=[{"id": f"j{at}", "site": f"p{at}", "minutes": 0, "windows": [whole_day]} for at in size[1:]],
    )
