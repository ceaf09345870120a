r"""Content lines of iCalendar (RFC 5545, section 3.1): escaped, folded, ended by CRLF.

Written by ourselves, because feeds are asked for all day and the library takes three times as long (bench_calendar_feed
says how long). The tests hold the bytes equal to the library's; what differs is meant: a backslash before an N is kept,
where it writes a line break, and lines whose name begins with X are escaped as any other text.
"""

from datetime import UTC, date, datetime, timedelta

LIMIT = 75
_ESCAPES = str.maketrans({"\\": "\\\\", ";": "\\;", ",": "\\,", "\n": "\\n", "\r": "\\n"})


def text_line(name: str, text: str) -> str:
    """A line of a TEXT value: backslash, comma, semicolon and line breaks escaped (section 3.3.11)."""
    return folded(f"{name}:{text.replace(chr(13) + chr(10), chr(10)).translate(_ESCAPES)}")


def folded(line: str) -> str:
    """The line in pieces of fewer than 75 octets, none of which splits a letter or ends in an escape's backslash."""
    if len(line) < LIMIT and line.isascii():
        return f"{line}\r\n"
    pieces: list[str] = []
    piece, octets = "", 0
    for letter in line:
        size = len(letter.encode())
        if piece and octets + size >= LIMIT:
            # because: some readers undo escapes before they join lines
            kept = piece[-1] if len(piece) > 1 and piece[-1] in "\\^" else ""
            pieces.append(piece.removesuffix(kept))
            piece, octets = kept, len(kept)
        piece += letter
        octets += size
    return "\r\n ".join([*pieces, piece]) + "\r\n"


def utc_stamp(at: datetime) -> str:
    """An aware instant in UTC to the second, such as 20261201T083000Z."""
    return at.astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")


def clock_stamp(at: datetime) -> str:
    """What the clock shows, without a zone."""
    return at.strftime("%Y%m%dT%H%M%S")


def day_stamp(day: date) -> str:
    return day.strftime("%Y%m%d")


def offset_stamp(offset: timedelta) -> str:
    """A UTC-OFFSET: sign, hours, minutes, and seconds where there are any (section 3.3.14)."""
    sign, seconds = ("-" if offset < timedelta(0) else "+"), round(abs(offset).total_seconds())
    hours, minutes, rest = seconds // 3600, seconds // 60 % 60, seconds % 60
    return f"{sign}{hours:02}{minutes:02}" + (f"{rest:02}" if rest else "")


def span_stamp(span: timedelta) -> str:
    """A DURATION of whole minutes, such as PT1H30M or -PT45M (section 3.3.6); ValueError for less than a minute."""
    minutes = round(abs(span).total_seconds() / 60)
    if not minutes:
        raise ValueError("a span of less than a minute")
    hours, rest = divmod(minutes, 60)
    sign = "-" if span < timedelta(0) else ""
    return f"{sign}PT" + (f"{hours}H" if hours else "") + (f"{rest}M" if rest else "")
