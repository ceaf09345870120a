"""The day on which what is ordered can be here."""

from datetime import date, timedelta

SATURDAY = 5


def arrival_day(ordered: date, lead_days: int) -> date:
    """The day on which something ordered on `ordered` comes: so many calendar days later, and where that is a Saturday
    or Sunday the Monday after. It comes during the day, so the first work done with it is that of the day after.
    Common practice, no source; a supplier who delivers otherwise is told by the lead days.
    """
    day = ordered + timedelta(days=lead_days)
    return day + timedelta(days=7 - day.weekday()) if day.weekday() >= SATURDAY else day
