"""Forms of knives and discs: a blade, what becomes of it, the bevel helper. They parse; services write."""

from typing import TYPE_CHECKING

from django import forms
from django.http import QueryDict

from trimops.web.day_input import DAY
from trimops.web.seen_form import SeenForm
from visits.domain.kit.bevel import (
    FLATTEST,
    STEEPEST,
    THICKEST,
    THINNEST,
    BevelLine,
    bevel_table,
    bevel_width,
)
from visits.domain.kit.blade_kinds import BladeFault, BladeKind, BladeState
from visits.domain.kit.put_right import PutRight, ways_to_put_right
from visits.models import Blade, Van
from visits.services.kit.change_blade_state import BladeStateWord

if TYPE_CHECKING:
    BladeModelForm = forms.ModelForm[Blade]
else:
    # Django's form classes take no type argument at run time.
    BladeModelForm = forms.ModelForm

SAID = (BladeState.IN_USE, BladeState.AT_GRINDING, BladeState.OUT_OF_USE, BladeState.RETIRED)
STATES = [(str(state.value), state.label) for state in SAID]
FAULTS = [("", "–"), *((str(fault.value), fault.label) for fault in BladeFault)]


class BladeForm(SeenForm, BladeModelForm):
    """A blade's particulars; a new one is asked whether it was used before."""

    was_used = forms.BooleanField(
        label="It has been used already",
        required=False,
        help_text="Then nobody knows what its first edge has cut, and that edge is left out of the curve.",
    )

    class Meta:
        model = Blade
        fields = [
            *("name", "van", "kind", "hand", "bought_on", "edge_angle"),
            *("thickness_mm", "hours_limit", "cost", "note"),
        ]
        labels = {
            "van": "Where it is",
            "edge_angle": "Edge angle, degrees",
            "thickness_mm": "Steel behind the bevel, mm",
            "hours_limit": "Replace after so many hours",
            "cost": "What it cost",
        }
        help_texts = {
            "edge_angle": "",
            "thickness_mm": "",
            "hours_limit": "Of a disc: as its maker or your own practice has it.",
        }
        widgets = {"bought_on": DAY}

    def __init__(
        self, data: QueryDict | None = None, *, instance: Blade, initial: dict[str, object] | None = None
    ) -> None:
        super().__init__(data, instance=instance, initial=initial)
        van = self.fields["van"]
        van.queryset = Van.objects.within(instance.scope)  # type: ignore[attr-defined]
        van.empty_label = "In the store"  # type: ignore[attr-defined]
        if instance.pk is not None:
            del self.fields["was_used"]


class BladeStateForm(forms.Form):
    """What becomes of it. `open_faults` are the dangers that must be put right before it is taken in hand again."""

    state = forms.ChoiceField(label="It is now", choices=STATES, widget=forms.RadioSelect)
    fault = forms.ChoiceField(label="Why it goes out", choices=FAULTS, required=False)
    put_right = forms.ChoiceField(label="What was done about it", required=False)
    note = forms.CharField(label="Note", max_length=150, required=False)

    def __init__(
        self,
        data: QueryDict | None = None,
        *,
        kind: BladeKind,
        open_faults: frozenset[BladeFault],
        initial: dict[str, object] | None = None,
    ) -> None:
        super().__init__(data, initial=initial)
        self.open_faults = open_faults
        ways = [
            way for way in PutRight if all(way in ways_to_put_right(kind, fault) for fault in open_faults)
        ]
        if not open_faults:
            ways = [PutRight.REPLACED]
        field = self.fields["put_right"]
        field.choices = [("", "–"), *((way.value, way.label) for way in ways)]  # type: ignore[attr-defined]
        field.help_text = (
            "Only when you have looked at it yourself."
            if open_faults
            else "A new one in its place begins a new edge, and its hours from nought."
        )

    @property
    def faults_words(self) -> str:
        """The open faults: "Chipped, handle loose"; empty where there is none."""
        return ", ".join(sorted(fault.label for fault in self.open_faults)).capitalize()

    def word(self) -> BladeStateWord:
        """What was said, once the form is valid."""
        data = self.cleaned_data
        return BladeStateWord(
            BladeState(data["state"]),
            BladeFault(data["fault"]) if data["fault"] else None,
            PutRight(data["put_right"]) if data["put_right"] else None,
            data["note"],
        )


class BevelForm(forms.Form):
    """How wide a bevel is: asked by GET, answered on the same page."""

    thickness = forms.FloatField(
        label="Thickness of the steel, mm",
        min_value=THINNEST,
        max_value=THICKEST,
        widget=forms.NumberInput(attrs={"step": "0.1"}),
    )
    angle = forms.FloatField(
        label="Edge angle, degrees",
        min_value=FLATTEST,
        max_value=STEEPEST,
        widget=forms.NumberInput(attrs={"step": "0.5"}),
    )

    def width(self) -> float:
        """Of the bevel in mm, once the form is valid."""
        return bevel_width(self.cleaned_data["thickness"], self.cleaned_data["angle"])

    def asked(self) -> str:
        """ "steel of 2.2 mm and an edge of 20°", once the form is valid."""
        thickness, angle = self.cleaned_data["thickness"], self.cleaned_data["angle"]
        return f"steel of {thickness:g} mm and an edge of {angle:g}°"

    def lines(self) -> tuple[BevelLine, ...]:
        """The usual angles for the same steel, once the form is valid."""
        return bevel_table(self.cleaned_data["thickness"])
