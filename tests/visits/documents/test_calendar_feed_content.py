from datetime import timedelta

from visits.documents.calendar_feed_content import CalendarFeed


def test_a_feed_is_asked_for_again_every_hour_unless_said_otherwise():
    assert CalendarFeed("c", "n", "Europe/London", ()).refresh == timedelta(hours=1)
