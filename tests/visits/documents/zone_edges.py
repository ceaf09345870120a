"""Instants on both sides of the changes of the clock, and at the edges of the calendar, in zones of five continents."""

from datetime import UTC, datetime


def utc(*parts: int) -> datetime:
    return datetime(*parts, tzinfo=UTC)


# Starts on both sides of both changes of each zone's clock (changes: IANA tzdata; all in UTC).
AROUND = {
    "Europe/London": [
        utc(2026, 10, 24, 8), utc(2026, 10, 25, 0, 30), utc(2026, 10, 25, 1, 30), utc(2026, 10, 26, 8),
        utc(2027, 3, 27, 8), utc(2027, 3, 28, 0, 59), utc(2027, 3, 28, 1, 0), utc(2027, 3, 29, 7), utc(2027, 7, 17, 7),
        # A leap day, the last day of a week 53, and the night between two years.
        utc(2028, 2, 29, 8), utc(2027, 1, 3, 9), utc(2026, 12, 31, 23, 30), utc(2027, 1, 1, 0, 15),
    ],
    "Europe/Dublin": [utc(2026, 10, 25, 0, 30), utc(2026, 10, 25, 1, 30), utc(2027, 3, 28, 1, 0), utc(2027, 7, 17, 7)],
    "Europe/Paris": [utc(2027, 3, 27, 7), utc(2027, 3, 29, 6), utc(2027, 7, 17, 6), utc(2027, 10, 31, 1, 30)],
    "America/New_York": [
        utc(2026, 11, 1, 5, 30), utc(2026, 11, 1, 6, 30), utc(2027, 3, 14, 7, 0), utc(2027, 3, 14, 6, 59),
    ],
    "America/St_Johns": [
        utc(2026, 11, 1, 3, 0), utc(2026, 11, 1, 6, 0), utc(2027, 3, 14, 5, 29), utc(2027, 3, 14, 5, 30),
    ],
    # Its clock moves by half an hour, at 2 o'clock of the clock in use (15:30 and 15:00 UTC of the day before).
    "Australia/Lord_Howe": [
        utc(2026, 10, 3, 15, 29), utc(2026, 10, 3, 15, 31), utc(2027, 4, 3, 14, 45), utc(2027, 4, 3, 15, 10),
        utc(2027, 4, 3, 15, 45), utc(2027, 1, 15, 22),
    ],
    "Australia/Sydney": [
        utc(2026, 10, 3, 15, 59), utc(2026, 10, 3, 16, 1), utc(2027, 4, 3, 15, 30), utc(2027, 4, 3, 16, 30),
    ],
    "Pacific/Chatham": [utc(2026, 9, 26, 13, 59), utc(2026, 9, 26, 14, 1), utc(2027, 4, 3, 14, 10), utc(2027, 6, 1, 1)],
    "America/Santiago": [utc(2026, 9, 6, 3, 59), utc(2026, 9, 6, 4, 1), utc(2027, 4, 4, 2, 59), utc(2027, 4, 4, 4, 1)],
    # Back to UTC for Ramadan alone: 2026-02-15 to 03-22, 2027-02-07 to 03-14. No yearly rule says that.
    "Africa/Casablanca": [
        utc(2026, 2, 15, 1, 59), utc(2026, 2, 15, 3, 1), utc(2026, 3, 22, 1, 59), utc(2026, 3, 22, 2, 1),
        utc(2027, 2, 7, 3, 1), utc(2027, 3, 14, 1, 59), utc(2027, 3, 14, 2, 1), utc(2027, 7, 1, 6),
    ],
    "Asia/Kolkata": [utc(2027, 7, 1, 3)],
    "Asia/Kathmandu": [utc(2027, 7, 1, 3), utc(2028, 2, 28, 18, 15)],
    "UTC": [utc(2027, 7, 1, 3)],
}  # fmt: skip
