"""A calendar address of a house, and what its subscriber reads."""

from datetime import datetime, timedelta

import icalendar

from tests.factories import NOON, House
from visits.documents.calendar_feed import calendar_feed
from visits.selectors.calendar_content import calendar_answer
from visits.services.make_calendar_address import FeedWish, Shown, make_calendar_address

LATER = NOON + timedelta(hours=2)
Events = dict[str, icalendar.Event]


def subscribe(house: House, shows: Shown | None = None, **wish: object) -> str:
    """The secret of a new address."""
    made = make_calendar_address(
        business=house.business,
        wish=FeedWish("Phone", shows, **wish),  # type: ignore[arg-type]
        at=NOON,
        by=house.owner,
    )
    return made.secret


def tag_and_bytes(secret: str, at: datetime = LATER) -> tuple[str, bytes]:
    found = calendar_answer(secret, at)
    assert found is not None
    return found.etag, calendar_feed(found.content())


def events(secret: str, at: datetime = LATER) -> Events:
    """The events by their summary, as the icalendar library reads them."""
    calendar = icalendar.Calendar.from_ical(tag_and_bytes(secret, at)[1])
    return {str(event["SUMMARY"]): event for event in calendar.events}


def only(secret: str, at: datetime = LATER) -> icalendar.Event:
    (event,) = events(secret, at).values()
    return event
