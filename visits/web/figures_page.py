"""A business's own figures: minutes, days, and what planning weighs."""

from collections.abc import Iterator
from dataclasses import asdict

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase, QueryDict
from django.shortcuts import redirect

from trimops.accounts.roles import Role
from trimops.web.scoped_page import ScopedPage
from visits.domain.planning_figures import PlanningFigures
from visits.domain.recheck_due import RecheckFigures
from visits.domain.visit_length import LengthFigures
from visits.models import BusinessFigures
from visits.selectors.lengths_story import lengths_story
from visits.selectors.roads_story import roads_story
from visits.services.set_figures import FigureMakesNoSense, OwnFigures, set_figures
from visits.web.figure_words import words_for

RECHECK_DEFAULTS = RecheckFigures()
PARTS = {
    "length-": "How long things take",
    "recheck-": "When a foot is looked at again, days after the trim",
    "planning-": "What planning weighs, and the roads",
}


class FiguresForm(forms.Form):
    """One field a figure; empty means the usual one, shown beside it."""

    all_may_stay_empty = True

    def __init__(self, data: QueryDict | None = None, *, own: BusinessFigures | None = None) -> None:
        super().__init__(data)
        for name, usual in asdict(LengthFigures()).items():
            self._add("length", name, words_for(name), usual, own.visit_length if own else {})
        for key, days in _recheck_defaults().items():
            for end, value in zip(("first", "last"), days, strict=True):
                given = (own.rechecks.get(key) if own else None) or (None, None)
                field = forms.IntegerField(
                    label=f"{words_for(key)}, {end} day", required=False, min_value=0, max_value=365
                )
                field.help_text, field.initial = f"Usual: {value}", given[0 if end == "first" else 1]
                self.fields[f"recheck-{key}-{end}"] = field
        for name, usual in asdict(PlanningFigures()).items():
            self._add("planning", name, words_for(name), usual, own.planning if own else {})

    def _add(self, group: str, name: str, label: str, usual: float, own: dict[str, float]) -> None:
        field = forms.FloatField(label=label, required=False, min_value=0, help_text=f"Usual: {usual:g}")
        field.initial = own.get(name)
        self.fields[f"{group}-{name}"] = field

    def parts(self) -> Iterator[tuple[str, list[forms.BoundField]]]:
        """The fields as the page lays them out, each part under its heading."""
        for start, heading in PARTS.items():
            yield heading, [self[name] for name in self.fields if name.startswith(start)]

    def figures(self) -> OwnFigures:
        """What differs from the usual, once the form is valid."""
        return OwnFigures(self._given("length"), self._rechecks(), self._given("planning"))

    def _given(self, group: str) -> dict[str, object]:
        found = self.cleaned_data.items()
        start = f"{group}-"
        return {
            key.removeprefix(start): value
            for key, value in found
            if key.startswith(start) and value is not None
        }

    def _rechecks(self) -> dict[str, object]:
        found: dict[str, object] = {}
        for key, usual in _recheck_defaults().items():
            given = [self.cleaned_data.get(f"recheck-{key}-{end}") for end in ("first", "last")]
            if any(value is not None for value in given):
                found[key] = [usual[n] if value is None else value for n, value in enumerate(given)]
        return found


def _recheck_defaults() -> dict[str, tuple[int, int]]:
    blocks = {f"block.{kind.value}": days for kind, days in RECHECK_DEFAULTS.block.items()}
    lesions = {f"lesion.{code.value}": days for code, days in RECHECK_DEFAULTS.lesion.items()}
    return {**blocks, **lesions, "lame_trim": RECHECK_DEFAULTS.lame_trim}


class FiguresPage(ScopedPage):
    roles = frozenset({Role.OWNER, Role.TRIMMER})
    template = "visits/figures.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        own = BusinessFigures.objects.within(self.scope).first()
        return self._page(FiguresForm(own=own))

    def post(self, request: HttpRequest) -> HttpResponseBase:
        form = FiguresForm(request.POST)
        if form.is_valid():
            try:
                set_figures(business=self.seat.business, figures=form.figures())
            except FigureMakesNoSense as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, "Your figures are kept; new visits and plans go by them.")
                return redirect("figures")
        return self._page(form, status=400)

    def _page(self, form: FiguresForm, status: int = 200) -> HttpResponse:
        business = self.seat.business
        told = {"roads": roads_story(business, self.now), "lengths": lengths_story(business)}
        return self.show({"form": form, **told}, status=status)
