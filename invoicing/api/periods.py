"""Which days are asked for in a query."""

from collections.abc import Mapping
from datetime import date, timedelta

from rest_framework import serializers

from invoicing.domain.tax_periods import BookDay, Period, PeriodKind
from invoicing.selectors.books_period import books_period
from trimops.api.fields import Day, OneOf
from trimops.api.refusals import CannotBeMeant
from trimops.api.view import Api
from trimops.kernel.clock import local_day

HALF_A_YEAR = timedelta(days=182)
Words = Mapping[str, serializers.Field]  # type: ignore[type-arg]
DAYS: Words = {
    "first": Day(help_text="The first day; half a year before the last, if nothing is said."),
    "last": Day(help_text="The last day; today, if nothing is said."),
}
PERIOD: Words = {
    "kind": OneOf(PeriodKind, help_text="How long; a month, if nothing is said."),
    "first": Day(help_text="Any day of the period, or the first of free days; today, if nothing is said."),
    "last": Day(help_text="The last of free days."),
}
PERIOD_AND_DAY: Words = {
    **PERIOD,
    "by": OneOf(BookDay, help_text="An invoice counts by; the day of issue, if nothing is said."),
}


def days_asked(api: Api) -> tuple[date, date]:
    """The first and the last day. CannotBeMeant where the last comes before the first."""
    last: date = api.asked.get("last") or local_day(api.now, api.seat.business.zone)
    first: date = api.asked.get("first") or last - HALF_A_YEAR
    refuse_turned(first, last)
    return first, last


def period_asked(api: Api) -> Period:
    """The period asked for; this month where nothing is. CannotBeMeant where free days end before they begin."""
    kind = api.asked.get("kind", PeriodKind.MONTH)
    first: date = api.asked.get("first") or local_day(api.now, api.seat.business.zone)
    last: date = api.asked.get("last") or first
    if kind is PeriodKind.FREE:
        refuse_turned(first, last)
    return books_period(api.scope, kind, first, last)


def refuse_turned(first: date, last: date) -> None:
    """CannotBeMeant where the last day comes before the first."""
    if last < first:
        raise CannotBeMeant(faults=[("query.last", "It comes before the first day.")])
