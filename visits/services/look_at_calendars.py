"""Outside calendars that were not read for a while are read again."""

from datetime import datetime, timedelta

from django.db.models import Q

from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.tenancy.unscoped import unscoped
from visits.models import OutsideCalendar

EVERY = timedelta(minutes=55)


def look_at_calendars(*, at: datetime) -> int:
    """Leave an errand for each that was last asked an hour ago; how many. Of many, those asked longest ago first."""
    due = Q(asked_at__isnull=True) | Q(asked_at__lte=at - EVERY)
    with unscoped("the timetable looks at all businesses"):
        rows = list(
            OutsideCalendar.objects.filter(due)
            .exclude(url="")
            .order_by("asked_at", "id")
            .values_list("pk", "business_id")
        )
    for pk, business_id in rows:
        ask_for_fetch(business_id=business_id, calendar_id=pk)
    return len(rows)


def ask_for_fetch(*, business_id: int, calendar_id: int) -> None:
    """Also for a person who does not want to wait for the hour."""
    enqueue(Job.FETCH_DAYS_OFF, business_id, calendar_id=calendar_id)
