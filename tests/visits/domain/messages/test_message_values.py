"""What stands in the places."""

from datetime import UTC, datetime

from visits.domain.messages.message_values import MessageFacts, message_values

SUMMER = datetime(2026, 7, 7, 8, 40, tzinfo=UTC)


def values(zone, language="en", *, short=False, **more):
    return message_values(MessageFacts("Low Croft", "Ash & Rye", zone, **more), language, short=short)


def test_hours_are_those_of_the_business(london):
    told = values(london, hour=SUMMER, before=SUMMER.replace(day=6))
    assert (told["day"], told["hour"]) == ("Tuesday 7 July", "09:40")
    assert told["before"] == "Monday 6 July, 09:40"


def test_days_are_in_the_language_of_the_text(london):
    assert values(london, "de", hour=SUMMER)["day"] == "Dienstag 7. Juli"


def test_without_a_span_the_hour_stands_for_both_ends(london):
    told = values(london, hour=SUMMER)
    assert told["from"] == told["until"] == "09:40"
    told = values(london, hour=SUMMER, earliest=SUMMER, latest=SUMMER.replace(hour=9, minute=0))
    assert (told["from"], told["until"]) == ("09:40", "10:00")


def test_cows_are_lines_in_a_mail_and_numbers_in_an_sms(london):
    cows = {"cow_lines": ["101: lame", "7: block due"], "cow_numbers": ["101", "7"], "cows": 2}
    assert values(london, **cows)["list"] == "101: lame\n7: block due"
    assert values(london, short=True, **cows)["list"] == "101, 7"
    assert values(london, **cows)["cows"] == "2"
