"""The form of an evening's sharpening: once how and when, and a line for each blade of the van."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from django import forms
from django.forms.boundfield import BoundField
from django.http import QueryDict

from visits.domain.kit.blade_kinds import EdgeBefore, EdgeFelt, SharpenMethod
from visits.selectors.kit.blades_to_sharpen import BladeToSharpen
from visits.services.kit.sharpen_blades import SharpenedBlade, SharpenWord
from visits.web.forms import MOMENT

BEFORES = [(str(before.value), before.label) for before in EdgeBefore]
FELTS = [("", "Not said"), *((str(felt.value), felt.label) for felt in EdgeFelt)]
METHODS = [("", "Not said"), *((str(method.value), method.label) for method in SharpenMethod)]
PARTS = ("before", "felt", "minutes", "angle", "cows", "chip")


@dataclass(frozen=True)
class SharpenRow:
    """The fields of one blade: the tick, and the rest."""

    of: BladeToSharpen
    tick: BoundField
    fields: Sequence[BoundField]

    @property
    def is_wrong(self) -> bool:
        return any(field.errors for field in (self.tick, *self.fields))


class SharpenedForm(forms.Form):
    """Only what is ticked was sharpened."""

    all_may_stay_empty = True

    at = forms.DateTimeField(label="When", widget=MOMENT)
    method = forms.ChoiceField(label="How", choices=METHODS, required=False)
    grit = forms.IntegerField(label="Grit", min_value=10, max_value=20000, required=False)
    done_by = forms.CharField(label="By whom", max_length=80, required=False)
    note = forms.CharField(label="Note", max_length=200, required=False)

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        blades: Sequence[BladeToSharpen],
        initial: dict[str, object] | None = None,
    ) -> None:
        super().__init__(data, initial=initial)
        self.blades = blades
        for each in blades:
            self._add(each)

    def _add(self, each: BladeToSharpen) -> None:
        key = each.blade.pk
        fields: dict[str, forms.Field] = {
            "blade": forms.BooleanField(
                label=each.blade.name, required=False, initial=each.is_due and not each.is_chipped
            ),
            "before": forms.ChoiceField(
                label="The edge before", choices=BEFORES, initial=each.before.value, required=False
            ),
            "felt": forms.ChoiceField(label="How it feels now", choices=FELTS, required=False),
            "minutes": forms.DecimalField(
                label="Minutes", min_value=0, max_value=600, decimal_places=1, required=False
            ),
            "angle": forms.DecimalField(
                label="Angle, degrees", min_value=5, max_value=60, decimal_places=1, required=False
            ),
            "cows": forms.IntegerField(
                label=f"Cows it cut, if not {each.cows}", min_value=0, max_value=2000, required=False
            ),
        }
        angle = each.blade.edge_angle
        fields["angle"].initial = None if angle is None else f"{float(angle):g}"
        if each.is_chipped:
            fields["chip"] = forms.BooleanField(label="The chip is ground out: back in use", required=False)
        for part, field in fields.items():
            self.fields[f"{part}_{key}"] = field

    @property
    def how(self) -> list[BoundField]:
        return [self[name] for name in ("at", "method", "grit", "done_by", "note")]

    @property
    def due(self) -> list[SharpenRow]:
        """The blades whose turn has come."""
        return [row for row in self._rows() if row.of.is_due]

    @property
    def others(self) -> list[SharpenRow]:
        return [row for row in self._rows() if not row.of.is_due]

    @property
    def others_are_used(self) -> bool:
        """Whether one of the others was ticked, or has something to mend."""
        return self.is_bound and any(row.tick.data or row.is_wrong for row in self.others)

    def _rows(self) -> Iterator[SharpenRow]:
        for each in self.blades:
            names = [f"{part}_{each.blade.pk}" for part in PARTS]
            fields = [self[name] for name in names if name in self.fields]
            yield SharpenRow(each, self[f"blade_{each.blade.pk}"], fields)

    def clean(self) -> None:
        super().clean()
        if not any(self.cleaned_data.get(f"blade_{each.blade.pk}") for each in self.blades):
            self.add_error(None, "Tick the blades that were sharpened.")

    def word(self) -> SharpenWord:
        """What was sharpened and how, once the form is valid."""
        data = self.cleaned_data
        moment: datetime = data["at"]
        return SharpenWord(
            [self._said(each) for each in self.blades if data[f"blade_{each.blade.pk}"]],
            moment,
            SharpenMethod(data["method"]) if data["method"] else None,
            data["grit"],
            data["done_by"],
            data["note"],
        )

    def _said(self, each: BladeToSharpen) -> SharpenedBlade:
        data, key = self.cleaned_data, each.blade.pk
        return SharpenedBlade(
            each.blade,
            EdgeBefore(data[f"before_{key}"] or EdgeBefore.NOT_SAID),
            EdgeFelt(data[f"felt_{key}"]) if data[f"felt_{key}"] else None,
            data[f"angle_{key}"],
            data[f"minutes_{key}"],
            data[f"cows_{key}"],
            bool(data.get(f"chip_{key}")),
        )
