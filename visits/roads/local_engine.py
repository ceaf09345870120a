"""A road map in this process: the OSRM library over an extract that was prepared for it.

The library is an optional extra (`roads`, wheels for Python 3.12 and newer), so it is looked for by name and loaded
only when it is asked.
"""

import hashlib
import importlib
import importlib.util
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Protocol, cast

from visits.domain.travel.travel_source import TravelSource
from visits.roads.read_table import read_table
from visits.roads.road_engine import SNAP_METRES, CarTable, Point, RoadsUnavailable

OFF_THE_MAP = "NoSegment"
CELLS, HIERARCHY = ".mldgr", ".hsgr"
"""What the two ways to prepare an extract leave beside it."""


class _Router(Protocol):
    """The library's part that is used here; its answers are read like mappings and lists."""

    def Table(self, parameters: object) -> Mapping[str, Iterable[object]]: ...


@dataclass(frozen=True)
class LocalEngine:
    """`extract` names the prepared files without what follows `.osrm`; `prepared` is when they were made."""

    extract: str
    prepared: int
    source = TravelSource.LOCAL

    @property
    def key(self) -> str:
        """Changes when the extract is prepared anew."""
        return "local-" + hashlib.sha256(f"{self.extract} {self.prepared}".encode()).hexdigest()[:16]

    def table(self, sources: Sequence[Point], destinations: Sequence[Point], seconds: float) -> CarTable:
        """`seconds` is not looked at: the library cannot be stopped, and takes milliseconds."""
        try:
            answer = self._ask(sources, destinations, is_strict=True)
        except RuntimeError as fault:
            if OFF_THE_MAP not in str(fault):
                raise RoadsUnavailable("the road map on this machine cannot be read") from fault
            answer = self._ask(sources, destinations, is_strict=False)
        return read_table(_plain(answer), len(sources), len(destinations))

    def _ask(
        self, sources: Sequence[Point], destinations: Sequence[Point], *, is_strict: bool
    ) -> Mapping[str, Iterable[object]]:
        points = [*sources, *destinations]
        # The library wants longitude before latitude.
        asked: dict[str, object] = {
            "coordinates": [(longitude, latitude) for latitude, longitude in points],
            "sources": list(range(len(sources))),
            "destinations": list(range(len(sources), len(points))),
            "annotations": ["duration", "distance"],
            "generate_hints": False,
        }
        if is_strict:
            asked["radiuses"] = [float(SNAP_METRES)] * len(points)
        return _router(self.extract, self.prepared).Table(_made("TableParameters", asked))


def local_engine(extract: str) -> LocalEngine:
    """RoadsUnavailable where the library or the prepared extract is missing."""
    if importlib.util.find_spec("osrm") is None:
        raise RoadsUnavailable("the road map on this machine needs the extra `roads` (Python 3.12 or newer)")
    made = [
        file.stat().st_mtime_ns for part in (CELLS, HIERARCHY) if (file := Path(extract + part)).is_file()
    ]
    if not made:
        raise RoadsUnavailable("there is no prepared road map where TRIMOPS_ROADS_FILE points")
    return LocalEngine(extract, max(made))


@cache
def _router(extract: str, prepared: int) -> _Router:
    """Opened once a process: reading the map takes far longer than asking it."""
    algorithm = "MLD" if Path(extract + CELLS).is_file() else "CH"
    given: dict[str, object] = {
        "storage_config": extract,
        "algorithm": algorithm,
        "use_shared_memory": False,
        "use_mmap": True,
    }
    return cast(_Router, _made("OSRM", given))


def _made(name: str, given: Mapping[str, object]) -> object:
    """An object of the library by the name of its class."""
    maker: Callable[..., object] = getattr(importlib.import_module("osrm"), name)
    return maker(**given)


def _plain(answer: Mapping[str, Iterable[object]]) -> dict[str, object]:
    """The library's own kinds of list as Python's."""
    grids = {
        name: [list(cast(Iterable[object], row)) for row in answer[name]]
        for name in ("durations", "distances")
    }
    return {
        **grids,
        **{name: [_distance(place) for place in answer[name]] for name in ("sources", "destinations")},
    }


def _distance(place: object) -> dict[str, object]:
    return {"distance": cast(Mapping[str, object], place)["distance"]}
