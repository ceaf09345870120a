"""Every form ISO 8601 has for an instant with an offset, and what is none."""

import pytest

from visits.domain.planning.audit.values import INSTANT, Misread
from visits.domain.planning.instant_text import plain_instant

SEVEN = "2026-03-02T07:00:00+00:00"


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        (SEVEN, SEVEN),
        ("2026-03-02T07:00:00Z", SEVEN),
        ("2026-03-02T07:00Z", SEVEN),
        ("2026-03-02T07Z", SEVEN),
        ("20260302T070000Z", SEVEN),
        ("2026-W10-1T07:00Z", SEVEN),
        ("2026-03-02T08:00:00+01", "2026-03-02T08:00:00+01:00"),
        ("2026-03-02T08:00:00+0100", "2026-03-02T08:00:00+01:00"),
        ("2026-03-01T18:30:00-12:30", "2026-03-01T18:30:00-12:30"),
        ("2026-03-02T07:00:00-00:00", SEVEN),
        ("2026-03-02T07:00:00.5Z", "2026-03-02T07:00:00.500000+00:00"),
        ("2026-03-02T07:00:00,123456789Z", "2026-03-02T07:00:00.123456+00:00"),
        ("2026-03-01T24:00:00.0+01:00", "2026-03-02T00:00:00+01:00"),
        ("2199-12-31T24:00Z", "2200-01-01T00:00:00+00:00"),
    ],
)
def test_an_instant_is_read_in_every_form_of_the_standard(text, plain):
    assert plain_instant(text) == plain
    assert INSTANT.read(text) == INSTANT.read(plain), "the audit reads it alike"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "is not an ISO 8601 instant with offset"),
        ("2026-03-02", "is not an ISO 8601 instant with offset"),
        ("2026-03-02 07:00:00Z", "is not an ISO 8601 instant with offset"),
        ("2026-03-02T07:00:00", "is not an ISO 8601 instant with offset"),
        ("2026-03-02T07:00:00+00:00:30", "is not an ISO 8601 instant with offset"),
        ("2026-03-02T07:00:00Z\n", "is not an ISO 8601 instant with offset"),
        ("\u0662026-03-02T07:00:00Z", "is not an ISO 8601 instant with offset"),
        ("2026-02-29T07:00:00Z", "is not a date and time of the calendar"),
        ("2026-03-02T07:60:00Z", "is not a date and time of the calendar"),
        ("2016-12-31T23:59:60Z", "is not a date and time of the calendar"),
        ("2026-03-02T24:00:01Z", "is not a date and time of the calendar"),
        ("2026-03-02T24:00:00.1Z", "is not a date and time of the calendar"),
        ("2026-03-02T07:00:00+24:00", "is not a date and time of the calendar"),
    ],
)
def test_what_is_no_instant_is_told_in_a_sentence(text, sentence):
    with pytest.raises(ValueError, match=sentence):
        plain_instant(text)
    with pytest.raises(Misread):
        INSTANT.read(text)


@pytest.mark.parametrize(
    "text", ["1970-12-31T23:59:59Z", "2200-01-01T00:00:00Z", "0001-01-01T00:00:00+14:00"]
)
def test_other_centuries_are_refused(text):
    with pytest.raises(ValueError, match="must lie in the years 1971 to 2199"):
        plain_instant(text)
