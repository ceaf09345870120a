"""Calendars as somebody's phone would publish them."""

CRLF = "\r\n"


def calendar(*entries: str, head: str = "") -> bytes:
    """Each entry is the lines of a VEVENT without its UID and DTSTAMP (an own UID may be among them)."""
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Somebody//Phone//EN", *head.split()]
    for number, entry in enumerate(entries):
        own = entry.strip().split("\n")
        uid = (
            []
            if any(line.strip().startswith("UID:") for line in own)
            else [f"UID:entry-{number}@phone.example"]
        )
        body = [line.strip() for line in own]
        lines += ["BEGIN:VEVENT", *uid, "DTSTAMP:20260101T000000Z", *body, "END:VEVENT"]
    return (CRLF.join([*lines, "END:VCALENDAR"]) + CRLF).encode()


HOLIDAY = "DTSTART;VALUE=DATE:20260310\nDTEND;VALUE=DATE:20260313\nSUMMARY:Away with the family"
DENTIST = (
    "DTSTART;TZID=Europe/London:20260303T093000\nDTEND;TZID=Europe/London:20260303T110000\nSUMMARY:Dentist"
)
