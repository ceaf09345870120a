"""An outside calendar is read again from its address."""

from datetime import date, datetime, timedelta

from django.db import transaction

from trimops.kernel.clock import local_day
from trimops.outside.guarded_http import Answer, Bounds, Question, ask
from trimops.outside.no_answer import NoAnswer
from trimops.outside.our_guard import our_guard
from visits.documents.busy_times import LARGEST
from visits.documents.busy_times_apart import read_busy_times_apart
from visits.documents.calendar_rules import CannotRead
from visits.models import OutsideCalendar
from visits.services.keep_busy_times import keep_busy_times

DAYS_AHEAD = 120
READ_ANEW = timedelta(days=7)
"""What is unchanged is read whole all the same after so long, for the days that have come nearer meanwhile."""
JUST_NOW = timedelta(seconds=20)
BOUNDS = Bounds(seconds=12, largest=LARGEST)
OK, NOT_CHANGED = 200, 304
MOST_WORDS = 300


def fetch_outside_calendar(*, calendar: OutsideCalendar, at: datetime) -> OutsideCalendar | None:
    """Ask for it and keep what it says. Whatever goes wrong is kept in words, and what was known before stays.

    No transaction is open while the other side is asked, and the calendar is read in a process of its own. None where
    it was taken off the list meanwhile, or comes from a file.
    """
    if not calendar.url:
        return None
    if calendar.asked_at is not None and timedelta(0) <= at - calendar.asked_at < JUST_NOW:
        return calendar  # because: an errand may be done twice, and many may have waited for a worker
    zone = calendar.business.zone
    until = last_day_kept(local_day(at, zone))
    try:
        answer = _ask(calendar, at)
        if answer.status == NOT_CHANGED:
            return _note(calendar, at, "")
        if answer.status != OK:
            return _note(calendar, at, f"the other side answered with {answer.status}")
        found = read_busy_times_apart(answer.body, local_day(at, zone), until, zone)
    except (NoAnswer, CannotRead) as fault:
        return _note(calendar, at, str(fault))
    marks = answer.headers.get("etag", ""), answer.headers.get("last-modified", "")
    with transaction.atomic():
        row = _still_there(calendar)
        return row and keep_busy_times(calendar=row, found=found, until=until, at=at, marks=marks)


def last_day_kept(today: date) -> date:
    """So far ahead that `DAYS_AHEAD` are still known on the day before it is read anew."""
    return today + timedelta(days=DAYS_AHEAD) + READ_ANEW


def _ask(calendar: OutsideCalendar, at: datetime) -> Answer:
    headers = {"Accept": "text/calendar"}
    if calendar.read_at is not None and at - calendar.read_at < READ_ANEW:
        if calendar.etag:
            headers["If-None-Match"] = calendar.etag
        elif calendar.last_modified:
            headers["If-Modified-Since"] = calendar.last_modified
    return ask(Question(calendar.url, headers=headers), our_guard(), BOUNDS)


@transaction.atomic
def _note(calendar: OutsideCalendar, at: datetime, fault: str) -> OutsideCalendar | None:
    """That it was asked; without a fault, that all of it still stands."""
    row = _still_there(calendar)
    if row is not None:
        row.asked_at, row.last_words = at, fault[:MOST_WORDS]
        row.fetched_at = row.fetched_at if fault else at
        row.save(update_fields=["asked_at", "last_words", "fetched_at"])
    return row


def _still_there(calendar: OutsideCalendar) -> OutsideCalendar | None:
    try:
        return calendar.locked()
    except OutsideCalendar.DoesNotExist:
        return None
