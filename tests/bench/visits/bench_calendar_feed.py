"""A calendar feed of 2,000 visits: bytes a second from the address to the bytes, against the bare library.

The bar: at most 1.5 times what the icalendar library needs to serialise the same events, which are put together for it
before the clock starts. Ours counts everything: the query, the values, the bytes. Processor time is counted, each way
the best of several turns, so that other work on the machine does not show; a reader who has the newest feed as well.
"""

import time
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime

from tests.bench.embedded_site import embedded_site  # isort: skip
from django.db import connection
from django.test.utils import CaptureQueriesContext

from tests.bench.visits.large_diary import large_diary
from tests.factories import make_house
from tests.visits.documents.feed_by_library import library_calendar
from tests.visits.selectors.calendar_read import subscribe
from visits.documents.calendar_feed import calendar_feed
from visits.selectors.calendar_content import calendar_answer

VISITS, TURNS = 2000, 5
MOST_TIMES = 1.5
NOW = datetime(2026, 3, 2, 12, tzinfo=UTC)


@dataclass(frozen=True)
class Measured:
    """Processor seconds for the whole feed, for its tag alone and for the library's bytes, and how many queries."""

    octets: int
    whole: float
    tag: float
    library: float
    queries: int

    @property
    def ratio(self) -> float:
        return self.whole / self.library


def measure(secret: str, turns: int) -> Measured:
    """The feed at NOW; AssertionError where the library's bytes are others."""

    def whole() -> bytes:
        found = calendar_answer(secret, NOW)
        assert found is not None
        return calendar_feed(found.content())

    def tag() -> str:
        found = calendar_answer(secret, NOW)
        return found.etag if found else ""

    with CaptureQueriesContext(connection) as asked:
        raw = whole()
    found = calendar_answer(secret, NOW)
    assert found is not None
    by_library = library_calendar(found.content())
    assert raw == bytes(by_library.to_ical())
    seconds = [best_of(turns, each) for each in (whole, tag, by_library.to_ical)]
    return Measured(len(raw), *seconds, len(asked))


def best_of(turns: int, make: Callable[[], object]) -> float:
    """Processor seconds of the quickest turn."""
    spent = []
    for _ in range(turns):
        began = time.process_time()
        make()
        spent.append(time.process_time() - began)
    return min(spent)


def main(count: int = VISITS) -> None:
    with embedded_site():
        house = make_house()
        large_diary(house, count, NOW)
        found = measure(subscribe(house, alarm_minutes=30), TURNS)
    mb = found.octets / 1e6
    print(f"  {count} visits, {mb:.2f} MB, queries: {found.queries}")
    print(f"  ours: {found.whole * 1000:.0f} ms, {mb / found.whole:.1f} MB/s")
    print(f"  the library on the same events: {found.library * 1000:.0f} ms, {mb / found.library:.1f} MB/s")
    print(f"  ratio {found.ratio:.2f} (bar: at most {MOST_TIMES}); a 304: {found.tag * 1000:.1f} ms")
    assert found.ratio <= MOST_TIMES


if __name__ == "__main__":
    main()
