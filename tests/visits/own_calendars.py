"""A van with a calendar of its trimmer's own, as its bytes say."""

from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from http.server import BaseHTTPRequestHandler

from tests.factories import NOON, House
from tests.services.odd_server import Asked, odd_server
from trimops.kernel.clock import local_day
from visits.documents.busy_times import read_busy_times
from visits.models import OutsideCalendar, Van
from visits.services.fetch_outside_calendar import last_day_kept
from visits.services.keep_busy_times import keep_busy_times


def own_calendar(
    house: House, content: bytes = b"", van: Van | None = None, **fields: object
) -> OutsideCalendar:
    """Read already where there is something in it."""
    row = OutsideCalendar.objects.create(
        business=house.business,
        van=van or house.van,
        made_at=NOON,
        made_by=house.trimmer,
        **{"name": "My calendar", **fields},
    )
    return reread(row, content) if content else row


def reread(row: OutsideCalendar, content: bytes, at: datetime = NOON) -> OutsideCalendar:
    zone = row.business.zone
    first = local_day(at, zone)
    found = read_busy_times(content, first, last_day_kept(first), zone)
    return keep_busy_times(calendar=row, found=found, until=last_day_kept(first), at=at)


class Publisher:
    """Publishes `content` with an ETag, answers 304 to whoever has it, or with `status` where that is a refusal."""

    def __init__(self, content: bytes) -> None:
        self.content, self.etag, self.status = content, '"one"', 200

    def __call__(self, handler: BaseHTTPRequestHandler) -> None:
        is_same = handler.headers.get("If-None-Match") == self.etag
        status = 304 if is_same and self.status == 200 else self.status
        body = b"" if status == 304 else self.content
        handler.send_response(status)
        handler.send_header("ETag", self.etag)
        handler.send_header("Content-Length", str(len(body)))
        handler.end_headers()
        handler.wfile.write(body)

    @contextmanager
    def at_work(self) -> Iterator[Asked]:
        with odd_server(self) as server:
            yield server
