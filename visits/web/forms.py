"""Forms around a visit. They parse; services write."""

import re

from django import forms
from django.http import QueryDict

from farms.models import Cow, Farm
from trimops.kernel.choices import choices_of
from trimops.kernel.scope import Scope
from trimops.web.day_input import DAY
from visits.domain.mobility import MobilityScale
from visits.domain.visit_states import VisitReason
from visits.models import Van
from visits.services.ask_visit import CowWish, VisitWish

MOMENT = forms.DateTimeInput(attrs={"type": "datetime-local"}, format="%Y-%m-%dT%H:%M")
SCORES = [
    ("", "Not scored"),
    *(
        (f"{scale.value}/{score}", f"{score} ({scale.label})")
        for scale in MobilityScale
        for score in scale.scores
    ),
]


def read_score(text: str) -> tuple[MobilityScale | None, int | None]:
    """Scale and score from one choice such as "UK0-3/2"; (None, None) when not scored."""
    if not text:
        return None, None
    scale, score = text.split("/")
    return MobilityScale(scale), int(score)


class VisitWishForm(forms.Form):
    reason = forms.ChoiceField(
        label="Why", choices=choices_of(VisitReason), initial=VisitReason.ROUTINE.value
    )
    asked_by = forms.CharField(label="Who asked", max_length=120)
    due_from = forms.DateField(label="Not before", widget=DAY)
    due_until = forms.DateField(label="Not after", widget=DAY)
    head_count = forms.IntegerField(label="Cows expected", min_value=1, max_value=500)
    corrective_count = forms.IntegerField(label="Of these, lame or re-checked", min_value=0, initial=0)
    score = forms.ChoiceField(label="Worst mobility score", choices=SCORES, required=False)
    cows = forms.CharField(
        label="Which cows",
        required=False,
        max_length=600,
        help_text="Numbers with commas between, if some are to be seen for sure.",
    )
    note = forms.CharField(label="Anything else", widget=forms.Textarea, required=False, max_length=2000)

    def __init__(
        self, data: QueryDict | None = None, *, farm: Farm, initial: dict[str, object] | None = None
    ) -> None:
        super().__init__(data, initial=initial)
        self.farm = farm

    def clean_cows(self) -> list[Cow]:
        """The cows of the farm by those numbers; an unknown number is said."""
        numbers = list(dict.fromkeys(filter(None, re.split(r"[\s,;]+", self.cleaned_data["cows"]))))
        rows = Cow.objects.within(self.farm.scope).on_farm().filter(farm=self.farm, number__in=numbers)
        known = {cow.number: cow for cow in rows}
        if missing := [number for number in numbers if number not in known]:
            raise forms.ValidationError(
                f"No cow here has the number {', '.join(missing)}: mend it, or add her first."
            )
        return list(known.values())

    def clean(self) -> None:
        super().clean()
        data = self.cleaned_data
        first, last = data.get("due_from"), data.get("due_until")
        if first and last and last < first:
            self.add_error("due_until", "This is before the first day: give the same day or a later one.")
        if (data.get("corrective_count") or 0) > (data.get("head_count") or 10_000):
            self.add_error("corrective_count", "More lame cows than cows: raise the number of cows expected.")

    def wish(self) -> VisitWish:
        """What was asked, once the form is valid."""
        data = self.cleaned_data
        scale, score = read_score(data["score"])
        return VisitWish(
            VisitReason(data["reason"]),
            data["asked_by"],
            data["due_from"],
            data["due_until"],
            data["head_count"],
            data["corrective_count"],
            scale,
            score,
            data["note"],
            tuple(CowWish(cow, "asked for") for cow in data["cows"]),
        )


class PlanVisitForm(forms.Form):
    van: "forms.ModelChoiceField[Van]" = forms.ModelChoiceField(queryset=None, empty_label=None)
    start = forms.DateTimeField(label="Begins", widget=MOMENT)

    def __init__(
        self, data: QueryDict | None = None, *, scope: Scope, initial: dict[str, object] | None = None
    ) -> None:
        super().__init__(data, initial=initial)
        self.fields["van"].queryset = Van.objects.within(scope).filter(is_active=True)  # type: ignore[attr-defined]


class FindForm(forms.Form):
    q = forms.CharField(label="Number, brand or end of the tag", required=False, max_length=30)


class ReasonForm(forms.Form):
    because = forms.CharField(label="Why", max_length=200)


class StartForm(forms.Form):
    checked = forms.BooleanField(label="All of this is checked", required=False)


class FinishForm(forms.Form):
    signed_by = forms.CharField(label="Signed for the farm by", max_length=120)
    washed_down = forms.BooleanField(
        label="Crush, knives, boots and van washed and disinfected", required=False
    )
    hygiene_note = forms.CharField(label="How it was washed", max_length=200, required=False)
