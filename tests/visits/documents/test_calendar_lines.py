"""Our content lines against the icalendar library's, and against the text of RFC 5545."""

from datetime import UTC, date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st
from icalendar import vDuration, vText, vUTCOffset
from icalendar.parser import Contentline, Parameters

from visits.documents.calendar_lines import (
    clock_stamp,
    day_stamp,
    folded,
    offset_stamp,
    span_stamp,
    text_line,
    utc_stamp,
)

# because: of a backslash before an N the library makes a line break, and what was written does not come back
TEXTS = st.text(
    st.one_of(
        st.sampled_from('\\;,\n\r:"^ \t aé–Ŵ🐄ノ'),
        st.characters(codec="utf-8", exclude_categories=("Cc", "Cs")),
    ),
    max_size=300,
).filter(lambda text: "\\N" not in text)


@given(text=TEXTS)
def test_a_text_is_escaped_and_folded_as_the_library_does_it(text):
    line = Contentline.from_parts("SUMMARY", Parameters(), vText(text))
    assert text_line("SUMMARY", text).encode() == line.to_ical() + b"\r\n"


@given(text=TEXTS)
def test_no_piece_is_longer_than_75_octets_and_none_splits_a_letter(text):
    raw = text_line("DESCRIPTION", text).encode()
    for piece in raw.removesuffix(b"\r\n").split(b"\r\n"):
        assert len(piece) <= 75
        piece.decode()
    assert b"\n" not in raw.replace(b"\r\n", b"")


@given(text=TEXTS)
def test_what_was_written_comes_back_by_the_rules_of_the_rfc_alone(text):
    unfolded = text_line("X", text).removesuffix("\r\n").replace("\r\n ", "").removeprefix("X:")
    out, letters = "", iter(unfolded)
    for letter in letters:
        out += {"n": "\n", "N": "\n"}.get(after := next(letters), after) if letter == "\\" else letter
    assert out == text.replace("\r\n", "\n").replace("\r", "\n")


def test_a_backslash_before_an_n_is_kept():
    assert text_line("X", r"C:\NEW") == "X:C:\\\\NEW\r\n"


@pytest.mark.parametrize("length", [72, 73, 74, 75, 76, 147, 148, 149, 150])
@pytest.mark.parametrize("letter", ["a", "é", "ノ", "🐄", "\\"])
def test_lines_at_the_edge_are_folded_as_the_library_does_it(length, letter):
    line = (letter * length)[:length]
    assert folded(line).encode() == Contentline(line).to_ical() + b"\r\n"


@given(minutes=st.integers(1, 100_000), sign=st.sampled_from((1, -1)))
def test_spans_are_read_back_by_the_library(minutes, sign):
    span = timedelta(minutes=minutes * sign)
    assert vDuration.from_ical(span_stamp(span)) == span


def test_a_span_of_nothing_is_refused():
    with pytest.raises(ValueError, match="minute"):
        span_stamp(timedelta(seconds=20))


@given(seconds=st.integers(-14 * 3600, 14 * 3600).filter(bool))
def test_offsets_are_read_back_by_the_library(seconds):
    offset = timedelta(seconds=seconds)
    assert offset_stamp(offset) == vUTCOffset(offset).to_ical()


def test_instants_days_and_clocks():
    at = datetime(2028, 2, 29, 23, 30, 59, 999_999, tzinfo=ZoneInfo("Australia/Lord_Howe"))
    assert (utc_stamp(at), clock_stamp(at)) == ("20280229T123059Z", "20280229T233059")
    assert day_stamp(date(2026, 12, 31)) == "20261231"
    assert utc_stamp(datetime(2026, 1, 1, tzinfo=UTC)) == "20260101T000000Z"
