"""What a farm client asks for: a lame cow seen to, or a routine visit."""

from datetime import date, timedelta

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from farms.models import WEEKDAYS, Cow, Farm
from trimops.portal.web.farm_seat import FARM_OF_PAGE
from trimops.web.day_input import DAY
from visits.domain.mobility import MobilityScale, is_lame, worst_score
from visits.domain.offer_days import asked_until
from visits.domain.visit_states import VisitReason
from visits.selectors.offer_again import AskedPlace
from visits.services.ask_visit import CowWish, VisitWish
from visits.web.forms import SCORES, read_score

MOST_COWS = 6
SHOWN_COWS = 2
LONGEST_AGO = timedelta(days=365)
FURTHEST = timedelta(days=120)


class WishForm(forms.Form):
    """What both have: by whom, at which farm, on which day it is asked."""

    what = forms.CharField(widget=forms.HiddenInput)
    farm_of_page = forms.CharField(widget=forms.HiddenInput, required=False)
    weekdays = forms.TypedMultipleChoiceField(
        label="Which days suit you",
        choices=WEEKDAYS,
        coerce=int,
        required=False,
        widget=forms.CheckboxSelectMultiple,
    )

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        farm: Farm,
        today: date,
        initial: dict[str, object] | None = None,
    ) -> None:
        super().__init__(data, initial={FARM_OF_PAGE: farm.pk, **(initial or {})})
        self.farm, self.today = farm, today

    def wish(self, asked_by: str) -> VisitWish:
        raise NotImplementedError

    def sent(self) -> list[tuple[str, str]]:
        """What was put in, as a later form sends it again."""
        values = ((name, value) for name in self.fields for value in self.data.getlist(name))  # type: ignore[attr-defined]
        return [(name, value) for name, value in values if value]


class LameCowsForm(WishForm):
    """Up to six cows by number, each with her score and since when; and what else there is."""

    all_may_stay_empty = True  # but the first cow; said once by the page instead of at each field
    more = forms.IntegerField(
        label="Other cows to be seen on the same visit", min_value=0, max_value=300, initial=0
    )
    note = forms.CharField(
        label="Anything else", required=False, max_length=500, widget=forms.Textarea(attrs={"rows": 2})
    )

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        farm: Farm,
        today: date,
        initial: dict[str, object] | None = None,
    ) -> None:
        super().__init__(data, farm=farm, today=today, initial=initial)
        for n in range(1, MOST_COWS + 1):
            self.fields[f"cow_{n}"] = forms.CharField(label="Cow", max_length=30, required=n == 1)
            self.fields[f"score_{n}"] = forms.ChoiceField(label="Score", choices=SCORES, required=False)
            self.fields[f"since_{n}"] = forms.DateField(label="Lame since", widget=DAY, required=False)
        self.fields["weekdays"].widget = forms.MultipleHiddenInput()

    def rows(self) -> list[tuple[BoundField, BoundField, BoundField]]:
        """The three fields of each cow."""
        return [(self[f"cow_{n}"], self[f"score_{n}"], self[f"since_{n}"]) for n in range(1, MOST_COWS + 1)]

    def first_rows(self) -> list[tuple[BoundField, BoundField, BoundField]]:
        return self.rows()[:SHOWN_COWS]

    def later_rows(self) -> list[tuple[BoundField, BoundField, BoundField]]:
        return self.rows()[SHOWN_COWS:]

    def clean(self) -> None:
        super().clean()
        data = self.cleaned_data
        for n in range(1, MOST_COWS + 1):
            since = data.get(f"since_{n}")
            if since and since > self.today:
                self.add_error(f"since_{n}", "That day has not come yet.")
            if since and since < self.today - LONGEST_AGO:
                self.add_error(f"since_{n}", "That is more than a year ago: give the day as near as you can.")
            if (data.get(f"score_{n}") or since) and not data.get(f"cow_{n}") and n > 1:
                self.add_error(f"cow_{n}", "Which cow is this?")

    def wish(self, asked_by: str) -> VisitWish:
        """What is asked for, once the form is valid: due as soon as the worst of the cows wants it."""
        named = self._named()
        found = self._found([number for number, *_ in named])
        scores = [(scale, score) for _, scale, score, _ in named if scale is not None and score is not None]
        worst = worst_score(scores)
        last = [asked_until(VisitReason.URGENT, self.today, *each) for each in scores]
        cows = tuple(
            _cow_wish(found[number], scale, score, since)
            for number, scale, score, since in named
            if number in found
        )
        strangers = [each for each in named if each[0] not in found]
        return VisitWish(
            reason=VisitReason.URGENT,
            asked_by=asked_by,
            due_from=self.today,
            due_until=min([asked_until(VisitReason.URGENT, self.today), *last]),
            head_count=len(named) + self.cleaned_data["more"],
            corrective_count=len(named),
            mobility_scale=worst[0] if worst else None,
            mobility_score=worst[1] if worst else None,
            note="\n".join(filter(None, [_of_strangers(strangers), self.cleaned_data["note"]])),
            cows=cows,
        )

    def _named(self) -> "list[Named]":
        data = self.cleaned_data
        rows: dict[str, Named] = {}
        for n in range(1, MOST_COWS + 1):
            if number := data[f"cow_{n}"].strip():
                rows.setdefault(number, (number, *read_score(data[f"score_{n}"]), data[f"since_{n}"]))
        return list(rows.values())

    def _found(self, numbers: list[str]) -> dict[str, Cow]:
        rows = Cow.objects.within(self.farm.scope).on_farm().filter(farm=self.farm, number__in=numbers)
        return {cow.number: cow for cow in rows}


class RoutineForm(WishForm):
    """How many cows, between which days, on which weekdays."""

    head_count = forms.IntegerField(label="Cows", min_value=1, max_value=500)
    due_from = forms.DateField(label="Not before", widget=DAY)
    due_until = forms.DateField(label="Not after", widget=DAY)
    note = forms.CharField(
        label="Anything else", required=False, max_length=500, widget=forms.Textarea(attrs={"rows": 2})
    )
    field_order = ["what", "head_count", "due_from", "due_until", "weekdays", "note"]

    def clean(self) -> None:
        super().clean()
        first, last = self.cleaned_data.get("due_from"), self.cleaned_data.get("due_until")
        if first and first < self.today:
            self.add_error("due_from", "That day is over: give today or a later one.")
        if first and first > self.today + FURTHEST:
            self.add_error("due_from", "That is too far ahead: give a day within four months.")
        if first and last and last < first:
            self.add_error("due_until", "This is before the first day: give the same day or a later one.")
        if last and last > self.today + 2 * FURTHEST:
            self.add_error("due_until", "That is too far ahead: give a day within eight months.")

    def wish(self, asked_by: str) -> VisitWish:
        data = self.cleaned_data
        return VisitWish(
            reason=VisitReason.ROUTINE,
            asked_by=asked_by,
            due_from=data["due_from"],
            due_until=data["due_until"],
            head_count=data["head_count"],
            note=data["note"],
        )


class PlaceForm(forms.Form):
    """The hours chosen, as the page of offers wrote them."""

    van = forms.IntegerField(widget=forms.HiddenInput)
    first = forms.DateTimeField(widget=forms.HiddenInput)
    last = forms.DateTimeField(widget=forms.HiddenInput)

    def __init__(self, data: QueryDict, *, today: date) -> None:
        super().__init__(data)
        self.today = today

    def clean(self) -> None:
        """No page wrote hours so far off, and a calendar has an end that weeks must not be counted over."""
        super().clean()
        days = [
            abs(at.date() - self.today) for name in ("first", "last") if (at := self.cleaned_data.get(name))
        ]
        if any(far > 3 * FURTHEST for far in days):
            raise forms.ValidationError("Choose one of the hours.")

    def place(self) -> AskedPlace:
        data = self.cleaned_data
        return AskedPlace(data["van"], data["first"], data["last"])


Named = tuple[str, MobilityScale | None, int | None, date | None]


def _cow_wish(cow: Cow, scale: MobilityScale | None, score: int | None, since: date | None) -> CowWish:
    is_scored_sound = scale is not None and score is not None and not is_lame(scale, score)
    why = "Asked for by the farm" if is_scored_sound else "Lame, says the farm"
    return CowWish(cow, why, scale, score, since)


def _of_strangers(named: "list[Named]") -> str:
    """A cow whose number is not on the herd list is no reason to refuse: she is told of in the note."""
    lines = []
    for number, scale, score, since in named:
        walked = f", score {score} ({scale.label})" if scale is not None else ""
        lines.append(
            f"Cow {number} (not on the herd list){walked}{f', lame since {since:%-d %B}' if since else ''}."
        )
    return " ".join(lines)


def asking_form(
    data: QueryDict | None, *, farm: Farm, today: date, what: str, initial: dict[str, object] | None = None
) -> WishForm:
    """The form of what is asked for; anything unknown is a lame cow."""
    kind = RoutineForm if what == "routine" else LameCowsForm
    return kind(data, farm=farm, today=today, initial=initial)
