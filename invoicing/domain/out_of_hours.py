"""Whether a visit began outside of the usual hours."""

from dataclasses import dataclass
from datetime import datetime, time

from trimops.paper.days import DAYS


@dataclass(frozen=True)
class UsualHours:
    """Local wall clock, both ends within; None: open at that end. `weekdays`: "12345", Monday is 1."""

    start: time | None = None
    end: time | None = None
    weekdays: str = "12345"


def why_out_of_hours(started: datetime, hours: UsualHours) -> str:
    """In words why a visit that began at `started` (in the business's zone) is out of hours; "" when it is not."""
    clock = started.time().replace(second=0, microsecond=0, tzinfo=None)
    if str(started.isoweekday()) not in hours.weekdays:
        return f"begun on a {DAYS[started.weekday()]}"
    if hours.start is not None and clock < hours.start:
        return f"begun at {clock:%H:%M}, before {hours.start:%H:%M}"
    if hours.end is not None and clock > hours.end:
        return f"begun at {clock:%H:%M}, after {hours.end:%H:%M}"
    return ""


def hours_in_words(hours: UsualHours) -> str:
    """Monday to Friday, from 07:00 until 18:00; an open end is left out."""
    days = [DAYS[int(number) - 1] for number in sorted(hours.weekdays)]
    in_a_row = len(days) > 2 and DAYS.index(days[-1]) - DAYS.index(days[0]) == len(days) - 1
    words = f"{days[0]} to {days[-1]}" if in_a_row else ", ".join(days)
    start = f"from {hours.start:%H:%M}" if hours.start else ""
    end = f"until {hours.end:%H:%M}" if hours.end else ""
    return ", ".join(filter(None, [words, f"{start} {end}".strip()]))
