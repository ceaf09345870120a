"""Invented days for a van's sheet."""

from datetime import datetime, timedelta

from tests.visits.documents.made_reports import DAY, LETTERHEAD, LONDON
from visits.documents.day_sheet_content import DaySheet, SheetMeal, SheetStop

SEVEN = datetime(2026, 12, 1, 7, tzinfo=LONDON)
MEAL = SheetMeal(SEVEN + timedelta(hours=5), SEVEN + timedelta(hours=5, minutes=30))


def stop(farm, hour=1.0, **changes):
    start = SEVEN + timedelta(hours=hour)
    plain = {
        "start": start,
        "finish": start + timedelta(hours=1),
        "farm": farm,
        "cows": 14,
        "drive_minutes": 18,
        "drive_km": 12.4,
        "hygiene": "1, usual",
    }
    return SheetStop(**(plain | changes))


def day(*stops, **changes):
    plain = {
        "letterhead": LETTERHEAD,
        "day": DAY,
        "van": "Van 1",
        "leave": SEVEN,
        "back": SEVEN + timedelta(hours=9),
        "km": 59.0,
        "stops": stops,
        "made_at": SEVEN - timedelta(hours=12),
    }
    return DaySheet(**(plain | changes))
