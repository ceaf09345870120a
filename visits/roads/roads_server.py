"""A road map behind an address: any server with the OSRM HTTP interface."""

import hashlib
import json
from collections.abc import Sequence
from dataclasses import dataclass
from urllib.parse import urlsplit

from trimops.outside.guarded_http import Answer
from visits.domain.travel.travel_source import TravelSource
from visits.roads.bounded_get import bounded_get
from visits.roads.read_table import read_table
from visits.roads.road_engine import CarTable, Point, RoadsUnavailable
from visits.roads.table_question import table_path

OFF_THE_MAP = "NoSegment"


@dataclass(frozen=True)
class RoadsServer:
    """`address` as far as `/table/...`, for example `http://roads.example:5000`."""

    address: str
    source = TravelSource.SERVER

    @property
    def key(self) -> str:
        return "server-" + hashlib.sha256(self.address.encode()).hexdigest()[:16]

    @property
    def host(self) -> str:
        """Whom we ask, without a name or password that the address may carry."""
        return urlsplit(self.address).hostname or ""

    def table(self, sources: Sequence[Point], destinations: Sequence[Point], seconds: float) -> CarTable:
        answer = self._ask(sources, destinations, seconds, is_strict=True)
        if answer.get("code") == OFF_THE_MAP:
            # One place off the map fails the whole question. Asked again without a limit, the server says how far
            # each place is from a road, and only the drives of those too far are left out.
            answer = self._ask(sources, destinations, seconds, is_strict=False)
        if answer.get("code") != "Ok":
            raise RoadsUnavailable(f"the roads server refused: {str(answer.get('code'))[:40]}")
        return read_table(answer, len(sources), len(destinations))

    def _ask(
        self, sources: Sequence[Point], destinations: Sequence[Point], seconds: float, *, is_strict: bool
    ) -> dict[str, object]:
        path = table_path(sources, destinations, is_strict=is_strict)
        return _document(bounded_get(self.address + path, seconds))


def roads_server(address: str) -> RoadsServer:
    """RoadsUnavailable where the address is none that could be asked."""
    try:
        parts = urlsplit(address)
        is_one = parts.scheme in ("http", "https") and bool(parts.hostname) and parts.port != 0
    except ValueError:
        is_one = False
    if not is_one or parts.query or parts.fragment:
        raise RoadsUnavailable("the address of the roads server must look like http://host:port")
    return RoadsServer(address.rstrip("/"))


def _document(answer: Answer) -> dict[str, object]:
    """What it says, also beside a status of refusal: the interface gives its code in both."""
    try:
        document = json.loads(answer.body)
    except (ValueError, RecursionError):
        document = None
    if isinstance(document, dict) and (answer.status == 200 or isinstance(document.get("code"), str)):
        return document
    if answer.status == 200:
        raise RoadsUnavailable("the roads server's answer cannot be read")
    raise RoadsUnavailable(f"the roads server answered with status {answer.status}")
