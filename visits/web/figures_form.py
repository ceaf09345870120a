"""The form in which a business sets its own figures: minutes, days, marks for the claw, what planning weighs."""

from collections.abc import Iterator
from dataclasses import asdict, dataclass

from django import forms
from django.http import QueryDict

from trimops.web.seen_form import SeenForm
from visits.domain.kit.kit_figures import KitFigures
from visits.domain.planning_figures import PlanningFigures
from visits.domain.recheck_due import RecheckFigures
from visits.domain.trim_figures import LONGEST_LANDMARK, TrimFigures
from visits.domain.visit_length import LengthFigures
from visits.models import BusinessFigures
from visits.services.set_figures import OwnFigures
from visits.web.figure_words import words_for

RECHECK_DEFAULTS = RecheckFigures()
ABOUT_THE_CLAW = (
    "Sources disagree on the shortest front wall: 75 mm (Toussaint Raven); 90 mm, which fits 96 % of claws "
    "(Archer 2015); others write 60 to 85 mm. They measure from different places too, so say from where you do. "
    "Toe angle after the cut: about 50° in the five-step method. For the belly band no limit is published. Outside "
    "your marks the page at the crush asks “sure?” and never stands in the way."
)
ABOUT_THE_KIT = (
    "How sure you want to be of not running out decides what is ordered and loaded. Your own log tells how many cows "
    "an edge does as soon as some eight edges have gone dull; no trial of it was found, so until then it is your word."
)
PARTS = {
    "length-": ("How long things take", ""),
    "recheck-": ("When a foot is looked at again, days after the trim", ""),
    "trim-": ("Your marks at the crush", ABOUT_THE_CLAW),
    "kit-": ("Stock and edges", ABOUT_THE_KIT),
    "planning-": ("What planning weighs, and the roads", ""),
}


@dataclass(frozen=True)
class FiguresPart:
    """One part of the page: its heading, a word on its sources, its fields."""

    heading: str
    note: str
    fields: list[forms.BoundField]


class FiguresForm(SeenForm, forms.Form):
    """One field a figure; empty means the usual one, shown beside it."""

    all_may_stay_empty = True

    def __init__(self, data: QueryDict | None = None, *, own: BusinessFigures | None = None) -> None:
        super().__init__(data)
        row = own or BusinessFigures()
        for name, usual in asdict(LengthFigures()).items():
            self.fields[f"length-{name}"] = _number(name, usual, row.visit_length)
        for key, days in _recheck_defaults().items():
            self._add_days(key, days, row.rechecks.get(key) or (None, None))
        for name, usual in asdict(TrimFigures()).items():
            self.fields[f"trim-{name}"] = _mark(name, usual, row.trim)
        for name, usual in asdict(KitFigures()).items():
            self.fields[f"kit-{name}"] = _number(name, usual, row.kit)
        for name, usual in asdict(PlanningFigures()).items():
            self.fields[f"planning-{name}"] = _number(name, usual, row.planning)

    def _add_days(self, key: str, usual: tuple[int, int], own: tuple[int | None, int | None]) -> None:
        for n, end in enumerate(("first", "last")):
            label = f"{words_for(key)}, {end} day"
            field = forms.IntegerField(label=label, required=False, min_value=0, max_value=365)
            field.help_text, field.initial = f"Usual: {usual[n]}", own[n]
            self.fields[f"recheck-{key}-{end}"] = field

    def parts(self) -> Iterator[FiguresPart]:
        """The fields as the page lays them out, each part under its heading."""
        for start, (heading, note) in PARTS.items():
            yield FiguresPart(heading, note, [self[name] for name in self.fields if name.startswith(start)])

    def figures(self) -> OwnFigures:
        """What differs from the usual, once the form is valid."""
        return OwnFigures(
            self._given("length"),
            self._rechecks(),
            self._given("planning"),
            self._given("trim"),
            self._given("kit"),
        )

    def _given(self, group: str) -> dict[str, object]:
        start = f"{group}-"
        return {
            key.removeprefix(start): value
            for key, value in self.cleaned_data.items()
            if key.startswith(start) and value not in (None, "")
        }

    def _rechecks(self) -> dict[str, object]:
        found: dict[str, object] = {}
        for key, usual in _recheck_defaults().items():
            given = [self.cleaned_data.get(f"recheck-{key}-{end}") for end in ("first", "last")]
            if any(value is not None for value in given):
                found[key] = [usual[n] if value is None else value for n, value in enumerate(given)]
        return found


def _number(name: str, usual: float, own: dict[str, float]) -> forms.Field:
    field = forms.FloatField(label=words_for(name), required=False, min_value=0)
    field.help_text, field.initial = f"Usual: {usual:g}", own.get(name)
    return field


def _mark(name: str, usual: int | str, own: dict[str, int | str]) -> forms.Field:
    """A whole number, or in words from where the wall is measured."""
    label = words_for(name)
    field: forms.Field = (
        forms.CharField(label=label, required=False, max_length=LONGEST_LANDMARK)
        if isinstance(usual, str)
        else forms.IntegerField(label=label, required=False, min_value=0, max_value=240)
    )
    field.help_text, field.initial = f"Usual: {usual}", own.get(name)
    return field


def _recheck_defaults() -> dict[str, tuple[int, int]]:
    blocks = {f"block.{kind.value}": days for kind, days in RECHECK_DEFAULTS.block.items()}
    lesions = {f"lesion.{code.value}": days for code, days in RECHECK_DEFAULTS.lesion.items()}
    return {**blocks, **lesions, "lame_trim": RECHECK_DEFAULTS.lame_trim}
