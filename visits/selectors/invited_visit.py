"""A visit as it stands in an invitation: the event of the feeds, in the words of who is visited."""

from datetime import datetime

from visits.documents.calendar_feed_content import CalendarVisit
from visits.models import Visit
from visits.selectors.calendar_events import STATUS, event_uid


def invited_visit(visit: Visit, start: datetime, finish: datetime) -> CalendarVisit:
    """At the hour given. What goes stale without a new invitation, such as the number of cows, is not in it."""
    farm = visit.farm
    changed = [visit.changed_at, *([farm.shown_since] if farm.shown_since else [])]
    return CalendarVisit(
        uid=event_uid(visit.uid),
        sequence=calendar_sequence(visit),
        last_modified=max(changed),
        start=start,
        end=finish,
        summary=f"Foot trimming at {farm.name}",
        status=STATUS[visit.visit_state],
        location=farm.address.replace("\n", ", ") or farm.name,
        lat=float(farm.latitude),
        lon=float(farm.longitude),
    )


def calendar_sequence(visit: Visit) -> int:
    """The visit's own and how often its farm's place changed: the SEQUENCE in feeds and invitations."""
    return visit.calendar_sequence + visit.farm.place_sequence
