"""Days as people of another language write them: names and their order come from CLDR, by Babel."""

from datetime import date

from babel.dates import format_date, format_skeleton

# because: in plain English CLDR writes the month first
WRITTEN_AS = {"en": "en_GB"}


def day_in(language: str, day: date) -> str:
    """Name of the day, number, name of the month: "Tuesday 1 December", "Dienstag 1. Dezember"."""
    # because: CLDR has no pattern of these three with the whole name of the day for all of them
    locale = WRITTEN_AS.get(language, language)
    name = format_date(day, "EEEE", locale=locale)
    return f"{name} {format_skeleton('MMMMd', day, locale=locale)}"
