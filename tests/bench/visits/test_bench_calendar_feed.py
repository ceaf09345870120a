"""The bench of the calendar feed in a small form."""

import pytest

from tests.bench.visits.bench_calendar_feed import NOW, measure
from tests.bench.visits.large_diary import large_diary
from tests.factories import make_house
from tests.visits.selectors.calendar_read import subscribe, tag_and_bytes


@pytest.mark.django_db
def test_the_diary_is_shown_whole_and_measured_in_one_query():
    house = make_house()
    large_diary(house, 40, NOW)
    secret = subscribe(house, alarm_minutes=30)
    found = measure(secret, turns=1)
    raw = tag_and_bytes(secret, NOW)[1]
    assert raw.count(b"BEGIN:VEVENT") == 40
    assert (found.octets, found.queries) == (len(raw), 1)
    assert min(found.whole, found.tag, found.library) > 0
