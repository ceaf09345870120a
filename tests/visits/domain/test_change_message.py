"""What a farm is told."""

from datetime import datetime
from urllib.parse import parse_qs, urlsplit
from zoneinfo import ZoneInfo

import pytest

from visits.domain.change_message import HourNews, change_message, mail_address, sms_address

ZONE = ZoneInfo("Europe/London")
TEN, NOON = (datetime(2026, 3, 3, hour, tzinfo=ZONE) for hour in (10, 12))
FRIDAY = datetime(2026, 3, 6, 9, 30, tzinfo=ZONE)


def told(before, now, **changes):
    return change_message(HourNews("Upper Fold", "Ash & Rye", before, now, **changes))


@pytest.mark.parametrize(
    ("before", "now", "changes", "text"),
    [
        (
            TEN,
            NOON,
            {"greet": "Jo", "because": "our kit has broken down"},
            "Hello Jo, we shall be at Upper Fold later on Tuesday 3 March: at 12:00 instead of 10:00, because our kit "
            "has broken down. Please tell us if that does not suit you. Ash & Rye",
        ),
        (
            NOON,
            TEN,
            {},
            "Hello, we shall be at Upper Fold earlier on Tuesday 3 March: at 10:00 instead of 12:00. Please tell us if "
            "that does not suit you. Ash & Rye",
        ),
        (
            TEN,
            FRIDAY,
            {},
            "Hello, we have to move the visit to Upper Fold from Tuesday 3 March at 10:00 to Friday 6 March at 09:30. "
            "Please tell us if that does not suit you. Ash & Rye",
        ),
        (
            None,
            FRIDAY,
            {},
            "Hello, we can come to Upper Fold for the foot trimming on Friday 6 March at 09:30. Please tell us if that "
            "does not suit you. Ash & Rye",
        ),
        (
            TEN,
            None,
            {},
            "Hello, we cannot come to Upper Fold on Tuesday 3 March at 10:00. We are looking for another day and will "
            "ring you. Ash & Rye",
        ),
        (
            TEN,
            None,
            {"is_off": True},
            "Hello, the foot trimming at Upper Fold on Tuesday 3 March at 10:00 is called off. Ash & Rye",
        ),
    ],
)
def test_the_text_says_what_was_and_what_will_be(before, now, changes, text):
    assert told(before, now, **changes) == text


def test_without_an_hour_there_is_nothing_to_tell():
    with pytest.raises(ValueError, match="nothing to tell"):
        told(None, None)


def test_the_phones_program_gets_number_and_text_whole():
    text = told(TEN, NOON)
    assert sms_address("+44 (0)1539 / 000-111", "a & b") == "sms:+4401539000111?body=a%20%26%20b"
    assert parse_qs(urlsplit(sms_address("01539 000111", text)).query)["body"] == [text]


@pytest.mark.parametrize("phone", ["", "none", "12", "ring the office"])
def test_no_number_no_link(phone):
    assert sms_address(phone, "text") == ""


def test_the_mail_program_gets_address_subject_and_text():
    link = urlsplit(mail_address("jo@example.invalid", "Upper Fold: 12:00", "Hello & more"))
    assert (link.scheme, link.path) == ("mailto", "jo@example.invalid")
    assert parse_qs(link.query) == {"subject": ["Upper Fold: 12:00"], "body": ["Hello & more"]}
    assert mail_address("", "s", "t") == ""
    assert "&bcc" not in mail_address("a@b.invalid?bcc=x@y.invalid", "s", "t").split("subject")[0]
