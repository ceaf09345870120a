"""When a farm's next routine visit falls due."""

from datetime import date, timedelta

from visits.domain.mobility import DueRange

SLACK_SHARE = 0.1
ASKED_BY_RULE = "routine rule"
"""Who asked, of a routine visit that nobody but the rule wants."""


def routine_due(last_visit: date | None, interval_days: int, today: date) -> DueRange:
    """The days in which the next routine visit fits: the interval after the last one, a tenth of it either
    way.

    A farm never visited is due from today. The tenth is our own figure (common practice, no source).
    """
    if last_visit is None:
        return DueRange(today, today + timedelta(days=14))
    slack = max(2, round(interval_days * SLACK_SHARE))
    middle = last_visit + timedelta(days=interval_days)
    return DueRange(middle - timedelta(days=slack), middle + timedelta(days=slack))
