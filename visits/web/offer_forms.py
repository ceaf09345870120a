"""Forms of the question when one can come."""

from datetime import date, datetime, timedelta

from django import forms
from django.http import QueryDict
from django.utils.timezone import localtime

from trimops.kernel.choices import choices_of
from visits.domain.offer_days import asked_until
from visits.domain.visit_states import VisitReason
from visits.models import HeldHour
from visits.selectors.offer_again import AskedPlace
from visits.selectors.offer_week import Spot
from visits.services.ask_visit import VisitWish
from visits.web.forms import SCORES, read_score

QUARTER = timedelta(minutes=15)


class WhenForm(forms.Form):
    """What the farm asks for on the phone."""

    reason = forms.ChoiceField(label="Why", choices=choices_of(VisitReason), initial=VisitReason.URGENT.value)
    head_count = forms.IntegerField(label="Cows", min_value=1, max_value=500)
    corrective_count = forms.IntegerField(label="Of these, lame or re-checked", min_value=0, initial=0)
    score = forms.ChoiceField(label="Worst mobility score", choices=SCORES, required=False)
    asked_by = forms.CharField(label="Who asks", max_length=120, initial="The farm, by phone")
    note = forms.CharField(
        label="Anything else",
        required=False,
        max_length=500,
        widget=forms.Textarea(attrs={"rows": 2}),
    )

    def clean(self) -> None:
        super().clean()
        data = self.cleaned_data
        if (data.get("corrective_count") or 0) > (data.get("head_count") or 10_000):
            self.add_error("corrective_count", "More lame cows than cows: raise the number of cows.")

    def wish(self, today: date) -> VisitWish:
        """What is asked for, once the form is valid; due from today on."""
        data = self.cleaned_data
        reason = VisitReason(data["reason"])
        scale, score = read_score(data["score"])
        return VisitWish(
            reason=reason,
            asked_by=data["asked_by"],
            due_from=today,
            due_until=asked_until(reason, today, scale, score),
            head_count=data["head_count"],
            corrective_count=data["corrective_count"],
            mobility_scale=scale,
            mobility_score=score,
            note=data["note"],
        )


class HoldForm(WhenForm):
    """The same with the place that is to be held, as the page of offers wrote it."""

    van = forms.IntegerField(widget=forms.HiddenInput)
    first = forms.DateTimeField(widget=forms.HiddenInput)
    last = forms.DateTimeField(widget=forms.HiddenInput)
    moved = forms.IntegerField(widget=forms.HiddenInput, required=False)
    to_van = forms.IntegerField(widget=forms.HiddenInput, required=False)
    to_day = forms.DateField(widget=forms.HiddenInput, required=False)

    def place(self) -> AskedPlace:
        """The place, once the form is valid."""
        data = self.cleaned_data
        known = data["to_van"] and data["to_day"]
        to = Spot(data["to_van"], data["to_day"]) if known else None
        return AskedPlace(data["van"], data["first"], data["last"], data["moved"], to)


class TakeForm(forms.Form):
    """Which hour of the span."""

    start = forms.TypedChoiceField(label="Begins", coerce=datetime.fromisoformat)

    def __init__(self, data: QueryDict | None = None, *, held: HeldHour) -> None:
        super().__init__(data, initial={"start": held.start.isoformat()})
        self.fields["start"].choices = hours_of_span(held)  # type: ignore[attr-defined]


def hours_of_span(held: HeldHour) -> list[tuple[str, str]]:
    """The hour that is held, and every quarter of an hour of the span told besides, in order."""
    first = held.first_start
    begins = first + (datetime.min.replace(tzinfo=first.tzinfo) - first) % QUARTER
    count = max(0, (held.last_start - begins) // QUARTER + 1)
    hours = {held.start, *(begins + n * QUARTER for n in range(count))}
    return [(hour.isoformat(), _word(hour, held)) for hour in sorted(hours)]


def _word(hour: datetime, held: HeldHour) -> str:
    clock = f"{localtime(hour):%H:%M}"
    return f"{clock}, the hour held" if hour == held.start else clock
