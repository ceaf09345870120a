"""What an outside calendar said is kept in place of what it said before."""

from datetime import date, datetime

from django.db import transaction

from visits.documents.busy_times import BusyTimes
from visits.models import OutsideBusy, OutsideCalendar

MOST_LEFT_OUT = 9_999


@transaction.atomic
def keep_busy_times(
    *,
    calendar: OutsideCalendar,
    found: BusyTimes,
    until: date,
    at: datetime,
    marks: tuple[str, str] = ("", ""),
) -> OutsideCalendar:
    """Its stretches as far as `until`; titles only where somebody wants them kept. `marks`: ETag and Last-Modified."""
    row = calendar.locked()
    OutsideBusy.objects.within(row.scope).filter(calendar=row).delete()
    OutsideBusy.objects.bulk_create(
        OutsideBusy(
            business_id=row.business_id,
            calendar=row,
            uid=busy.uid,
            starts=busy.starts,
            ends=busy.ends,
            is_all_day=busy.is_all_day,
            summary=busy.summary if row.keeps_titles else "",
        )
        for busy in found.times
    )
    row.asked_at = row.fetched_at = row.read_at = at
    row.read_until, row.left_out, row.last_words = until, min(found.left_out, MOST_LEFT_OUT), ""
    # because: a mark that is too long is of no use when it is cut
    row.etag, row.last_modified = (
        mark if len(mark) <= most else "" for mark, most in zip(marks, (200, 60), strict=True)
    )
    row.save()
    return row
