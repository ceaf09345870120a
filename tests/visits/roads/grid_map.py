"""A roads server that knows every place and answers any block: 1 minute and 1 km a drive, or as it is told."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from urllib.parse import parse_qs, urlsplit

from tests.services.odd_server import Asked, odd_server, says


@dataclass
class Roads:
    """What the server says of every drive; `is_down` has it answer with a fault, `no_road` with nulls."""

    seconds: float = 60
    metres: float = 1000
    is_down: bool = False
    no_road: bool = False


@contextmanager
def grid_map() -> Iterator[tuple[Asked, Roads]]:
    """The server's address with the questions heard, and what it shall say."""
    roads = Roads()

    def answer(handler):
        if roads.is_down:
            return says({"message": "out of order"}, 500)(handler)
        query = parse_qs(urlsplit(handler.path).query)
        rows, columns = (len(query[name][0].split(";")) for name in ("sources", "destinations"))

        def cells(figure):
            return [[None if roads.no_road else figure] * columns] * rows

        return says(
            {
                "code": "Ok",
                "durations": cells(roads.seconds),
                "distances": cells(roads.metres),
                "sources": [{"distance": 5}] * rows,
                "destinations": [{"distance": 5}] * columns,
            }
        )(handler)

    with odd_server(answer) as asked:
        yield asked, roads
