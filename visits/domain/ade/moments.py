"""Instants and days as the exchange writes them: RFC 3339, in UTC, with a Z."""

from datetime import UTC, date, datetime, time

NOON = time(12)


def instant_text(at: datetime) -> str:
    """ "2026-03-02T10:41:00Z". ValueError for an instant without a zone: it would be somebody's guess."""
    if at.tzinfo is None:
        raise ValueError("an instant needs its zone")
    return f"{at.astimezone(UTC):%Y-%m-%dT%H:%M:%SZ}"


def day_text(day: date) -> str:
    """A day of which no hour is known, as noon in UTC: the same day for readers from Alaska to Japan.

    Midnight would turn into the day before for every reader west of Greenwich.
    """
    return instant_text(datetime.combine(day, NOON, tzinfo=UTC))
