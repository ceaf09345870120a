import pytest

from tests.factories import NOON, make_house
from tests.visits.documents.own_calendar import DENTIST, HOLIDAY, calendar
from tests.visits.own_calendars import own_calendar, reread
from visits.documents.busy_times import BusyTimes
from visits.models import OutsideBusy
from visits.services.keep_busy_times import keep_busy_times

pytestmark = pytest.mark.django_db


def kept(house):
    rows = OutsideBusy.objects.within(house.scope).order_by("starts")
    return [(row.is_all_day, row.summary) for row in rows]


def test_what_it_says_now_stands_in_place_of_what_it_said():
    house = make_house()
    row = own_calendar(house, calendar(DENTIST, HOLIDAY), keeps_titles=True)
    assert kept(house) == [(False, "Dentist"), (True, "Away with the family")]
    row = reread(row, calendar(HOLIDAY))
    assert kept(house) == [(True, "Away with the family")]
    assert (row.read_at, row.last_words) == (NOON, "")


def test_what_an_entry_is_called_is_kept_only_where_somebody_wants_it():
    house = make_house()
    own_calendar(house, calendar(DENTIST))
    assert kept(house) == [(False, "")]


def test_marks_too_long_to_be_kept_whole_are_not_kept_at_all():
    row = own_calendar(make_house())
    row = keep_busy_times(
        calendar=row,
        found=BusyTimes((), 20_000),
        until=NOON.date(),
        at=NOON,
        marks=("x" * 201, "Mon, 2 Mar 2026"),
    )
    assert (row.etag, row.last_modified, row.left_out) == ("", "Mon, 2 Mar 2026", 9_999)
