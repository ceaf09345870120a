"""What a calendar address shows, and the tag that is another one whenever its bytes would be."""

import hashlib
import json
from dataclasses import dataclass
from datetime import datetime, timedelta
from functools import cache
from pathlib import Path
from uuid import NAMESPACE_URL, uuid5

from visits.documents.calendar_feed_content import CalendarFeed
from visits.documents.zone_footer import zone_file
from visits.models import CalendarAddress
from visits.selectors.calendar_events import VisitRow, visit_event
from visits.selectors.calendar_rows import CalendarRows, calendar_rows
from visits.selectors.calendar_stays import DayOffRow, VanOutRow, day_off_event, van_out_event

VISITS_APP = Path(__file__).parents[1]
MADE_BY = (
    "documents/calendar_*.py",
    "documents/zone_*.py",
    "selectors/calendar_*.py",
    "selectors/rows_as_text.py",
)


@dataclass(frozen=True)
class CalendarAnswer:
    """What an address shows just now: its tag at once, its content when it is asked for."""

    rows: CalendarRows

    @property
    def etag(self) -> str:
        """A strong entity tag (RFC 9110, section 8.8.3): the hash of all values shown and of what makes the bytes of
        them, so that a new version of the program or of the time zones is another feed too."""
        address, rows = self.rows.address, self.rows
        zone = address.business.timezone
        of_address = (
            _form(zone),
            address.pk,
            _name(address),
            zone,
            address.alarm_minutes,
            address.shows_wishes,
        )
        tag = hashlib.sha256(json.dumps(of_address).encode())
        for text in (rows.visits, rows.days_off, rows.outs):
            tag.update(hashlib.sha256(text.encode()).digest())
        return f'"{tag.hexdigest()[:40]}"'

    def content(self) -> CalendarFeed:
        """The feed of just those values; no further query."""
        address, rows = self.rows.address, self.rows
        zone, wishes, minutes = address.business.zone, address.shows_wishes, address.alarm_minutes
        visits = [visit_event(VisitRow(*row), zone, shows_wishes=wishes) for row in json.loads(rows.visits)]
        off = [DayOffRow(*row) for row in json.loads(rows.days_off)]
        outs = [VanOutRow(*row) for row in json.loads(rows.outs)]
        stays = [day_off_event(row, _uid(address, f"day off {row.key}"), zone) for row in off]
        stays += [van_out_event(row, _uid(address, f"out {row.key}"), zone) for row in outs]
        return CalendarFeed(
            uid=_uid(address, "calendar"),
            name=_name(address),
            zone=zone.key,
            visits=(*visits, *stays),
            alarm=timedelta(minutes=minutes) if minutes else None,
        )


def calendar_answer(secret: str, now: datetime) -> CalendarAnswer | None:
    """What lies behind the secret; None for one that is unknown, closed or whose maker has left. One query."""
    rows = calendar_rows(secret, now)
    return CalendarAnswer(rows) if rows else None


@cache
def _form(zone: str) -> str:
    """What makes the bytes beside the values: our modules and the zone's file, read once in the life of a process."""
    files = [file for pattern in MADE_BY for file in sorted(VISITS_APP.glob(pattern))]
    return hashlib.sha256(b"\0".join([*(file.read_bytes() for file in files), zone_file(zone)])).hexdigest()


def _name(address: CalendarAddress) -> str:
    whose = address.van or address.farm or (address.trimmer.name if address.trimmer else "all vans")
    return f"{address.business.name}: {whose}"


def _uid(address: CalendarAddress, what: str) -> str:
    """One that no other calendar has, of this or another business or machine; the same for the address's life."""
    return f"{uuid5(NAMESPACE_URL, f'trimops:{address.secret_hash}:{what}')}@visits.trimops"
