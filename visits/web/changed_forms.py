"""What happened, asked for with as few fields as it needs. They parse; services write."""

from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from django import forms
from django.http import QueryDict

from farms.models import Farm
from trimops.accounts.models import Business
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from trimops.web.day_input import DAY
from visits.domain.visit_states import VisitReason, VisitState
from visits.domain.what_happened import WhatHappened
from visits.models import OutBecause, Van, Visit
from visits.selectors.week_under_way import LateWord
from visits.services.ask_visit import VisitWish
from visits.services.note_what_happened import Happening, LameWord, OffWord, OutWord
from visits.web.forms import MOMENT, SCORES, read_score

OPEN = (VisitState.PLANNED, VisitState.CONFIRMED, VisitState.UNDER_WAY)
BROKEN = [choice for choice in OutBecause.choices if choice[0] != OutBecause.ILL]


@dataclass(frozen=True)
class Asked:
    """Where and when the question is put."""

    business: Business
    monday: date
    now: datetime

    @property
    def scope(self) -> Scope:
        return Scope(self.business.pk)

    @property
    def zone(self) -> ZoneInfo:
        return self.business.zone

    @property
    def today(self) -> date:
        return local_day(self.now, self.zone)

    def between(self, first: date, last: date) -> tuple[datetime, datetime]:
        """From the beginning of one day to the end of another."""
        return at_local(first, time(0), self.zone), at_local(last + timedelta(days=1), time(0), self.zone)


class VisitChoice(forms.ModelChoiceField):  # type: ignore[type-arg]
    """Visits by hour, farm and van."""

    def label_from_instance(self, obj: Visit) -> str:
        start = obj.planned_start.astimezone(obj.business.zone) if obj.planned_start else None
        return f"{start:%a %-d %b %H:%M}, {obj.farm.name}, {obj.van}" if start else obj.farm.name


class ChangedForm(forms.Form):
    """The base: it knows where and when it is asked, and says what happened once it is valid."""

    def __init__(self, data: QueryDict | None = None, *, asked: Asked) -> None:
        super().__init__(data)
        self.asked = asked

    def happening(self) -> Happening:
        raise NotImplementedError

    def choose_from(self, name: str, rows: object) -> None:
        """The rows that the field of that name offers."""
        self.fields[name].queryset = rows  # type: ignore[attr-defined]

    def open_visits(self, first: date, last: date) -> object:
        """Visits still to be done that have their hour between those days."""
        start, end = self.asked.between(first, last)
        rows = Visit.objects.within(self.asked.scope).in_state(*OPEN).starting_between(start, end)
        return rows.select_related("farm", "van", "business").order_by("planned_start", "id")


class LateForm(ChangedForm):
    visit = VisitChoice(queryset=None, label="At which farm", empty_label=None)
    free = forms.TimeField(
        label="Done there at", widget=forms.TimeInput(attrs={"type": "time"}, format="%H:%M")
    )
    meal_had = forms.BooleanField(label="They have had their meal", required=False)

    def __init__(self, data: QueryDict | None = None, *, asked: Asked) -> None:
        super().__init__(data, asked=asked)
        self.choose_from("visit", self.open_visits(asked.today, asked.today))

    def happening(self) -> LateWord:
        free = at_local(self.asked.today, self.cleaned_data["free"], self.asked.zone)
        return LateWord(self.cleaned_data["visit"], free, self.cleaned_data["meal_had"])


class OutForm(ChangedForm):
    van: "forms.ModelChoiceField[Van]" = forms.ModelChoiceField(queryset=None, empty_label=None)
    because = forms.ChoiceField(label="What is broken", choices=BROKEN)
    since = forms.DateTimeField(label="Out of action from", widget=MOMENT)
    until = forms.DateTimeField(
        label="Back at", widget=MOMENT, help_text="Your best guess; it can be put right."
    )

    def __init__(self, data: QueryDict | None = None, *, asked: Asked) -> None:
        super().__init__(data, asked=asked)
        self.choose_from("van", Van.objects.within(asked.scope).filter(is_active=True))
        now = asked.now.astimezone(asked.zone).replace(second=0, microsecond=0)
        self.fields["since"].initial = now
        self.fields["until"].initial = at_local(asked.today + timedelta(days=1), time(7), asked.zone)

    def happening(self) -> OutWord:
        data = self.cleaned_data
        return OutWord(data["van"], OutBecause(data["because"]), data["since"], data["until"])


class IllForm(ChangedForm):
    van: "forms.ModelChoiceField[Van]" = forms.ModelChoiceField(
        queryset=None, label="Whose van stays in", empty_label=None
    )
    first = forms.DateField(label="First day", widget=DAY)
    last = forms.DateField(label="Last day", widget=DAY, help_text="Your best guess; it can be put right.")

    def __init__(self, data: QueryDict | None = None, *, asked: Asked) -> None:
        super().__init__(data, asked=asked)
        self.choose_from("van", Van.objects.within(asked.scope).filter(is_active=True))
        self.fields["first"].initial = self.fields["last"].initial = asked.today

    def clean(self) -> None:
        super().clean()
        first, last = self.cleaned_data.get("first"), self.cleaned_data.get("last")
        if first and last and last < first:
            self.add_error("last", "This is before the first day: give the same day or a later one.")

    def happening(self) -> OutWord:
        data = self.cleaned_data
        since, until = self.asked.between(data["first"], data["last"])
        return OutWord(
            data["van"], OutBecause.ILL, max(since, self.asked.now.replace(second=0, microsecond=0)), until
        )


class CalledOffForm(ChangedForm):
    visit = VisitChoice(queryset=None, label="Which visit", empty_label=None)
    because = forms.CharField(label="Why", max_length=200)

    def __init__(self, data: QueryDict | None = None, *, asked: Asked) -> None:
        super().__init__(data, asked=asked)
        self.choose_from("visit", self.open_visits(asked.monday, asked.monday + timedelta(days=6)))

    def happening(self) -> OffWord:
        return OffWord(self.cleaned_data["visit"], self.cleaned_data["because"])


class LameForm(ChangedForm):
    farm: "forms.ModelChoiceField[Farm]" = forms.ModelChoiceField(queryset=None, empty_label=None)
    head_count = forms.IntegerField(label="Lame cows", min_value=1, max_value=60, initial=1)
    due_until = forms.DateField(label="To be seen by", widget=DAY)
    score = forms.ChoiceField(label="Worst mobility score", choices=SCORES, required=False)
    asked_by = forms.CharField(label="Who rang", max_length=120)

    def __init__(self, data: QueryDict | None = None, *, asked: Asked) -> None:
        super().__init__(data, asked=asked)
        self.choose_from("farm", Farm.objects.within(asked.scope).active())
        self.fields["due_until"].initial = asked.today + timedelta(days=1)

    def clean_due_until(self) -> date:
        day: date = self.cleaned_data["due_until"]
        if day < self.asked.today:
            raise forms.ValidationError("This day is over: give today or a later one.")
        return day

    def happening(self) -> LameWord:
        data = self.cleaned_data
        scale, score = read_score(data["score"])
        cows = data["head_count"]
        first = max(self.asked.today, self.asked.monday)
        wish = VisitWish(
            VisitReason.URGENT,
            data["asked_by"],
            first,
            max(first, data["due_until"]),
            cows,
            cows,
            scale,
            score,
        )
        return LameWord(data["farm"], wish)


FORMS: dict[WhatHappened, type[ChangedForm]] = {
    WhatHappened.LATE: LateForm,
    WhatHappened.OUT: OutForm,
    WhatHappened.ILL: IllForm,
    WhatHappened.CALLED_OFF: CalledOffForm,
    WhatHappened.LAME: LameForm,
}
