"""A calendar of the trimmer's own is put on a van's list: by its address, or from a file."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from django.db import transaction

from trimops.accounts.models import User
from trimops.errands.services.enqueue import enqueue
from trimops.jobs import Job
from trimops.kernel.clock import local_day
from trimops.kernel.errors import FieldRefused
from trimops.outside.no_answer import NoAnswer
from trimops.outside.our_guard import our_guard
from visits.documents.busy_times_apart import read_busy_times_apart
from visits.documents.calendar_rules import CannotRead
from visits.models import OutsideCalendar, Van
from visits.services.keep_busy_times import keep_busy_times

MOST_CALENDARS = 5
FILE_AHEAD = timedelta(days=400)
"""Nobody reads a file again, so it counts for longer than what is fetched."""
ITS_OWN_SCHEME = ("webcal://", "webcals://")
"""How calendar programs write an address that is asked by HTTPS."""


class CalendarRefused(FieldRefused):
    """It cannot be read as it is written."""

    code = "calendar_refused"


@dataclass(frozen=True)
class CalendarWish:
    """By `url`, or as the bytes of a `file`: one of the two."""

    name: str
    url: str = ""
    file: bytes | None = None
    only_whole_days: bool = False
    keeps_titles: bool = False


def add_outside_calendar(*, van: Van, wish: CalendarWish, at: datetime, by: User) -> OutsideCalendar:
    """The row; of a file it is read at once, of an address right after the commit.

    CalendarRefused: neither or both of the two, an address that may not be asked or is on the list, a file that is no
    calendar, or too many.
    """
    if bool(wish.url.strip()) == (wish.file is not None):
        raise CalendarRefused("url", "Give its address, or a file of it: one of the two.")
    zone = van.business.zone
    today = local_day(at, zone)
    until = today + FILE_AHEAD
    found = None
    if wish.file is not None:
        try:
            found = read_busy_times_apart(wish.file, today, until, zone)
        except CannotRead as fault:
            raise CalendarRefused("file", f"The file was not read: {fault}.") from None
    with transaction.atomic():
        row = _add(van, wish, at, by)
        if found is not None:
            return keep_busy_times(calendar=row, found=found, until=until, at=at)
        enqueue(Job.FETCH_DAYS_OFF, row.business_id, calendar_id=row.pk)
    return row


def _add(van: Van, wish: CalendarWish, at: datetime, by: User) -> OutsideCalendar:
    van = van.locked()
    row = OutsideCalendar(business_id=van.business_id, van=van, name=wish.name, made_at=at, made_by=by)
    row.only_whole_days, row.keeps_titles = wish.only_whole_days, wish.keeps_titles
    row.url = _address(wish.url) if wish.file is None else ""
    others = OutsideCalendar.objects.within(van.scope).filter(van=van)
    if row.url and others.filter(url=row.url).exists():
        raise CalendarRefused("url", "This calendar is on the list of the van already.")
    if others.count() >= MOST_CALENDARS:
        raise CalendarRefused("name", f"A van has {MOST_CALENDARS} calendars at most: take one off first.")
    row.full_clean()
    row.save()
    return row


def _address(written: str) -> str:
    address = written.strip()
    for scheme in ITS_OWN_SCHEME:
        if address.lower().startswith(scheme):
            address = "https://" + address[len(scheme) :]
    try:
        our_guard().target(address)
    except NoAnswer as no:
        raise CalendarRefused("url", f"Nothing can be read there: {no}.") from None
    return address
