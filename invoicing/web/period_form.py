"""Which period is looked at: asked in the address, so that a page of the books can be kept as a bookmark."""

from dataclasses import dataclass
from datetime import date, timedelta
from urllib.parse import urlencode

from django import forms
from django.http import QueryDict

from invoicing.domain.tax_periods import BookDay, Period, PeriodKind
from invoicing.selectors.books_period import books_period
from trimops.kernel.choices import choices_of
from trimops.kernel.scope import Scope
from trimops.web.day_input import DAY

ONE_DAY = timedelta(days=1)
FIRST_DAY, LAST_DAY = date(1970, 1, 1), date(2199, 12, 31)
"""Days further off are slips (the year 26), and the calendar ends beside the last of them."""


class PeriodForm(forms.Form):
    """A GET form; what is left out is this month, by the day of issue."""

    all_may_stay_empty = True
    kind = forms.ChoiceField(label="How long", choices=choices_of(PeriodKind), required=False)
    first = forms.DateField(label="From, or any day of it", widget=DAY, required=False)
    last = forms.DateField(label="Until", widget=DAY, required=False)
    by = forms.ChoiceField(label="An invoice counts by", choices=choices_of(BookDay), required=False)

    def clean(self) -> None:
        super().clean()
        first, last = self.cleaned_data.get("first"), self.cleaned_data.get("last")
        for name, day in (("first", first), ("last", last)):
            if day and not FIRST_DAY <= day <= LAST_DAY:
                self.add_error(name, f"Look at the year: it is {day.year} here.")
        if first and last and last < first and self.cleaned_data.get("kind") == PeriodKind.FREE:
            self.add_error("last", "This is before the first day: give the same day or a later one.")


class DrivesPeriodForm(PeriodForm):
    """Of drives: each has one day only."""

    by = None  # type: ignore[assignment]  # because: so Django's forms let go of a field


@dataclass(frozen=True)
class Neighbour:
    """A period beside the one asked for: its words, and the part of an address that asks for it."""

    words: str
    query: str


@dataclass(frozen=True)
class AskedPeriod:
    """The period, the form to ask for another, and its neighbours (None: free days, or one that has not begun)."""

    form: PeriodForm
    period: Period
    by: BookDay
    today: date
    query: str
    before: Neighbour | None
    after: Neighbour | None

    @property
    def is_over(self) -> bool:
        return self.period.last < self.today


def asked_period(
    scope: Scope, data: QueryDict, today: date, form_class: type[PeriodForm] = PeriodForm
) -> AskedPeriod:
    """What the address asks for; this month where it asks for nothing that can be."""
    form = form_class(data or None, initial=_initial(today))
    good = form.cleaned_data if form.is_bound and form.is_valid() else {}
    kind = PeriodKind(good.get("kind") or PeriodKind.MONTH)
    by = BookDay(good.get("by") or BookDay.ISSUED)
    period = books_period(scope, kind, good.get("first") or today, good.get("last"))
    before = _neighbour(scope, kind, period.first - ONE_DAY, by)
    after = _neighbour(scope, kind, period.last + ONE_DAY, by) if period.last < today else None
    return AskedPeriod(form, period, by, today, _query(kind, period, by), before, after)


def _neighbour(scope: Scope, kind: PeriodKind, day: date, by: BookDay) -> Neighbour | None:
    if kind is PeriodKind.FREE:
        return None
    period = books_period(scope, kind, day)
    return Neighbour(period.words, _query(kind, period, by))


def _query(kind: PeriodKind, period: Period, by: BookDay) -> str:
    """The part of an address that asks for that period again."""
    asked = {"kind": kind.value, "first": period.first.isoformat(), "by": by.value}
    if kind is PeriodKind.FREE:
        asked["last"] = period.last.isoformat()
    return urlencode(asked)


def _initial(today: date) -> dict[str, object]:
    return {"kind": PeriodKind.MONTH.value, "first": today, "by": BookDay.ISSUED.value}
