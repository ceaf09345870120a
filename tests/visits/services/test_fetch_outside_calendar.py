"""A calendar read over a real line: changed, unchanged, broken, gone, and leading where nobody may go."""

from datetime import timedelta

import pytest

from tests.factories import NOON, make_house
from tests.services.odd_server import odd_server, points_to
from tests.visits.documents.own_calendar import DENTIST, HOLIDAY, calendar
from tests.visits.own_calendars import Publisher, own_calendar
from visits.models import OutsideBusy
from visits.services.fetch_outside_calendar import DAYS_AHEAD, READ_ANEW, fetch_outside_calendar
from visits.services.remove_outside_calendar import remove_outside_calendar

pytestmark = pytest.mark.django_db
HOUR = timedelta(hours=1)


@pytest.fixture
def published(settings):
    publisher = Publisher(calendar(DENTIST))
    with publisher.at_work() as server:
        settings.INNER_ADDRESSES = [server.place]
        house = make_house()
        row = own_calendar(house, url=server.address + "/me.ics")
        yield publisher, server, house, row


def fetch(row, at=NOON):
    return fetch_outside_calendar(calendar=row, at=at)


def busy(house):
    return OutsideBusy.objects.within(house.scope).count()


def test_it_is_read_and_asked_for_with_its_mark_the_next_time(published):
    publisher, server, house, row = published
    row = fetch(row)
    assert (busy(house), row.etag, row.fetched_at, row.last_words) == (1, '"one"', NOON, "")
    row = fetch(row, NOON + HOUR)
    assert server.headers[1]["if-none-match"] == '"one"'
    assert (busy(house), row.fetched_at, row.read_at) == (1, NOON + HOUR, NOON)
    publisher.content, publisher.etag = calendar(DENTIST, HOLIDAY), '"two"'
    row = fetch(row, NOON + 2 * HOUR)
    assert (busy(house), row.etag) == (2, '"two"')


def test_unchanged_it_is_read_whole_once_a_week_for_the_days_that_came_nearer(published):
    _, server, _, row = published
    row = fetch(fetch(row), NOON + READ_ANEW)
    assert "if-none-match" not in server.headers[1]
    assert row.read_at == NOON + READ_ANEW
    assert (row.read_until - (NOON + READ_ANEW).date()).days >= DAYS_AHEAD


@pytest.mark.parametrize(
    ("content", "status", "words"),
    [
        (b"no", 503, "answered with 503"),
        (b"no", 404, "answered with 404"),
        (b"<html>Please sign in</html>", 200, "no calendar"),
        (b"BEGIN:VCALENDAR\r\n" + b"X" * 3_000_000, 200, "larger"),
    ],
)
def test_a_failure_is_told_and_what_was_known_stays(published, content, status, words):
    publisher, _, house, row = published
    row = fetch(row)
    publisher.content, publisher.status, publisher.etag = content, status, '"other"'
    row = fetch(row, NOON + HOUR)
    assert words in row.last_words
    assert (busy(house), row.fetched_at, row.asked_at) == (1, NOON, NOON + HOUR)
    publisher.content, publisher.status = calendar(), 200
    row = fetch(row, NOON + 2 * HOUR)
    assert (busy(house), row.last_words) == (0, "")


def test_it_leads_nowhere_inside(published, settings):
    _, _, _, row = published
    settings.INNER_ADDRESSES = []
    assert "must begin with https" in fetch(row).last_words


def test_nor_by_pointing_there(settings):
    with odd_server(points_to("https://127.0.0.1/")) as server:
        settings.INNER_ADDRESSES = [server.place]
        row = fetch(own_calendar(make_house(), url=server.address))
    assert "open internet" in row.last_words


def test_asked_twice_at_once_it_is_read_once(published):
    _, server, _, row = published
    row = fetch(row)
    assert fetch(row, NOON + timedelta(seconds=5)) == row
    assert len(server.paths) == 1


def test_a_calendar_taken_off_meanwhile_keeps_nothing(published):
    _, _, house, row = published
    remove_outside_calendar(calendar=row)
    assert fetch(row) is None
    assert busy(house) == 0


def test_one_from_a_file_is_not_asked_for():
    assert fetch(own_calendar(make_house())) is None
