"""Days and clock times in words, the same on every machine (no system locale)."""

from datetime import date, datetime, timedelta

DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def day_long(day: date) -> str:
    """ "Tuesday 1 December 2026" """
    return f"{DAYS[day.weekday()]} {day.day} {MONTHS[day.month - 1]} {day.year}"


def day_plain(day: date) -> str:
    """ "1 December 2026" """
    return f"{day.day} {MONTHS[day.month - 1]} {day.year}"


def day_short(day: date) -> str:
    """ "Tue 1 Dec" """
    return f"{DAYS[day.weekday()][:3]} {day.day} {MONTHS[day.month - 1][:3]}"


def day_short_year(day: date) -> str:
    """ "1 Dec 2026" """
    return f"{day.day} {MONTHS[day.month - 1][:3]} {day.year}"


def clock(at: datetime) -> str:
    """The wall-clock time an aware instant shows in its own zone: "09:40" """
    return f"{at.hour:02d}:{at.minute:02d}"


def length(span: timedelta) -> str:
    """ "45 min", "2 h", "2 h 25 min" """
    minutes = round(span.total_seconds() / 60)
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"
