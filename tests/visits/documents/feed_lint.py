"""A lint of iCalendar bytes for what no library refuses: line ends, folding, escaping, zones (RFC 5545, RFC 7986)."""

import re
from collections.abc import Iterator

STATUSES = {"TENTATIVE", "CONFIRMED", "CANCELLED"}
TEXTS = ("SUMMARY", "LOCATION", "DESCRIPTION", "COMMENT")
UNESCAPED = re.compile(r"(?<!\\)(?:\\\\)*[,;]")


def faults_of(raw: bytes) -> list[str]:
    """Every fault, in words; none for bytes that a subscriber may be given."""
    return [*_line_faults(raw), *_content_faults(_unfolded(raw))]


def _line_faults(raw: bytes) -> Iterator[str]:
    if re.search(rb"(?<!\r)\n|\r(?!\n)", raw):
        yield "a line does not end in CRLF"
    for line in raw.split(b"\n"):
        if len(line.rstrip(b"\r")) > 75:
            yield "a line is longer than 75 octets"
        try:
            line.decode("utf-8")
        except UnicodeDecodeError:
            yield "a fold splits a letter"


def _unfolded(raw: bytes) -> list[str]:
    text = raw.decode("utf-8", "replace").replace("\r\n", "\n").replace("\n ", "").replace("\n\t", "")
    return [line for line in text.split("\n") if line]


def _content_faults(lines: list[str]) -> Iterator[str]:
    names = [line.split(":")[0].split(";")[0] for line in lines]
    if "PRODID" not in names:
        yield "no PRODID"
    zones = {line.removeprefix("TZID:") for line in lines if line.startswith("TZID:")}
    for line in lines:
        name = line.split(":")[0].split(";")[0]
        used = re.search(r";TZID=([^:;]+)", line.split(":")[0])
        if used and used[1].strip('"') not in zones:
            yield f"no VTIMEZONE for {used[1]}"
        if name in TEXTS and UNESCAPED.search(line.split(":", 1)[1]):
            yield f"{name} has a bare comma or semicolon"
        if name == "REFRESH-INTERVAL" and ";VALUE=DURATION" not in line.split(":")[0]:
            yield "REFRESH-INTERVAL without VALUE=DURATION"
        if name == "RDATE" and "," in line:
            yield "several dates in one RDATE"
    for event in _events(lines):
        yield from _event_faults(event)


def _events(lines: list[str]) -> Iterator[dict[str, list[str]]]:
    event: dict[str, list[str]] | None = None
    inner = ""
    for line in lines:
        if line == "BEGIN:VEVENT":
            event = {}
        elif event is not None and line == "END:VEVENT":
            yield event
            event = None
        elif event is not None:
            inner = "VALARM " if line == "BEGIN:VALARM" else "" if line == "END:VALARM" else inner
            event.setdefault(inner + line.split(":")[0].split(";")[0], []).append(line)


def _event_faults(event: dict[str, list[str]]) -> Iterator[str]:
    for name in ("UID", "DTSTAMP", "DTSTART"):
        if len(event.get(name, [])) != 1:
            yield f"{len(event.get(name, []))} of {name}"
    if "DTEND" in event and "DURATION" in event:
        yield "both DTEND and DURATION"
    for status in event.get("STATUS", []):
        if status.split(":")[1] not in STATUSES:
            yield "no such STATUS"
    if any(line.startswith("VALARM BEGIN") for line in event) and "VALARM TRIGGER" not in event:
        yield "an alarm without TRIGGER"
    yield from _time_faults(event)


def _time_faults(event: dict[str, list[str]]) -> Iterator[str]:
    start, end = (event.get(name, [""])[0] for name in ("DTSTART", "DTEND"))
    is_alike = start.split(":")[0].removeprefix("DTSTART") == end.split(":")[0].removeprefix("DTEND")
    if end and is_alike and end.split(":")[1] <= start.split(":")[1]:
        yield "ends before it starts"
    until = re.search(r"UNTIL=(\w+)", " ".join(event.get("RRULE", [])))
    if until and "T" in start.split(":")[1] and not until[1].endswith("Z"):
        yield "UNTIL is not in UTC"
