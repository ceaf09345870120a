from datetime import date
from zoneinfo import ZoneInfo

import pytest

from tests.visits.documents.own_calendar import DENTIST, HOLIDAY, calendar
from visits.documents import busy_times_apart
from visits.documents.busy_times import read_busy_times
from visits.documents.busy_times_apart import read_busy_times_apart
from visits.documents.calendar_rules import CannotRead

LONDON = ZoneInfo("Europe/London")
DAYS = date(2026, 3, 2), date(2026, 6, 30), LONDON


def test_read_apart_it_is_read_the_same():
    content = calendar(
        DENTIST, HOLIDAY, "SUMMARY:Ńo day", "DTSTART:20260305T010000Z\nDURATION:PT1H\nSUMMARY:Ünder"
    )
    assert read_busy_times_apart(content, *DAYS) == read_busy_times(content, *DAYS)


def test_what_is_refused_there_is_refused_here_in_the_same_words():
    with pytest.raises(CannotRead, match=r"it is no calendar \(iCalendar, .ics\)"):
        read_busy_times_apart(b"<html>\nPlease sign in", *DAYS)


def test_what_takes_too_long_is_ended(monkeypatch):
    """A calendar that names itself again and again, read for a hundredth of a second."""
    monkeypatch.setattr(busy_times_apart, "WALL_SECONDS", 0.01)
    with pytest.raises(CannotRead, match="takes too long"):
        read_busy_times_apart(calendar(DENTIST), *DAYS)


def test_what_takes_too_much_memory_is_ended(monkeypatch):
    monkeypatch.setattr(busy_times_apart, "COMMAND", ["-c", "import os; os.abort()"])
    with pytest.raises(CannotRead, match="takes too long"):
        read_busy_times_apart(calendar(DENTIST), *DAYS)
