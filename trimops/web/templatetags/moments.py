"""Days and times in the business's zone, in English, however the machine is set up.

The zone is the active one: the middleware calls `timezone.activate(business.zone)` for each request. Each filter
takes a zone as its argument where a page shows another one. A `date` needs no zone. None is a dash.
"""

from datetime import date, datetime, tzinfo
from typing import Final

from django import template
from django.utils import timezone

register = template.Library()

DAYS: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS: Final = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def _local(value: date, zone: tzinfo | None) -> date:
    return timezone.localtime(value, zone) if isinstance(value, datetime) else value


@register.filter
def day(value: date | None, zone: tzinfo | None = None) -> str:
    """Tue 2 Mar."""
    if value is None:
        return "–"
    at = _local(value, zone)
    return f"{DAYS[at.weekday()][:3]} {at.day} {MONTHS[at.month - 1][:3]}"


@register.filter
def day_year(value: date | None, zone: tzinfo | None = None) -> str:
    """Tue 2 Mar 2027."""
    return "–" if value is None else f"{day(value, zone)} {_local(value, zone).year}"


@register.filter
def day_long(value: date | None, zone: tzinfo | None = None) -> str:
    """Tuesday 2 March."""
    if value is None:
        return "–"
    at = _local(value, zone)
    return f"{DAYS[at.weekday()]} {at.day} {MONTHS[at.month - 1]}"


@register.filter
def weekday(value: date | None, zone: tzinfo | None = None) -> str:
    """Tuesday."""
    return "–" if value is None else DAYS[_local(value, zone).weekday()]


@register.filter
def clock(value: datetime | None, zone: tzinfo | None = None) -> str:
    """09:30."""
    return "–" if value is None else f"{timezone.localtime(value, zone):%H:%M}"


@register.filter
def moment(value: datetime | None, zone: tzinfo | None = None) -> str:
    """Tue 2 Mar, 09:30."""
    return "–" if value is None else f"{day(value, zone)}, {clock(value, zone)}"


@register.filter
def till(start: datetime, end: datetime) -> str:
    """09:30 to 11:45, and with the day of the end where the two fall on different days."""
    same_day = timezone.localtime(start).date() == timezone.localtime(end).date()
    return f"{clock(start)} to {clock(end) if same_day else moment(end)}"
