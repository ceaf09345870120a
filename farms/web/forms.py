"""Forms of farms and cows. They parse; services write."""

from typing import TYPE_CHECKING

from django import forms
from django.core.files.uploadedfile import UploadedFile

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HIGHEST_LACTATION
from farms.domain.herd_table import MOST_BYTES
from farms.models import Cow, Farm, Payer
from trimops.kernel.file_kinds import TABLES
from trimops.kernel.scope import Scope
from trimops.web.day_input import DAY
from trimops.web.file_field import NamedFileField
from trimops.web.seen_form import SeenForm

if TYPE_CHECKING:
    FarmModelForm = forms.ModelForm[Farm]
    CowModelForm = forms.ModelForm[Cow]
else:
    # Django's form classes take no type argument at run time.
    FarmModelForm = CowModelForm = forms.ModelForm


class FarmForm(SeenForm, FarmModelForm):
    class Meta:
        model = Farm
        fields = [
            "name",
            "address",
            "latitude",
            "longitude",
            "access_notes",
            "phone",
            "email",
            "vat_number",
            "payer",
            "herd_size",
            "routine_interval_days",
            "routine_cows",
            "rest_after_milking_minutes",
            "crush_place",
            "has_hard_standing",
            "has_water",
            "has_light",
            "power",
            "shelter",
            "hygiene_level",
            "hygiene_reason",
            "wash_rule",
            "is_active",
        ]
        labels = {
            "access_notes": "Way in",
            "email": "Email",
            "vat_number": "VAT number",
            "payer": "Bills go to",
            "herd_size": "Cows in the herd",
            "routine_interval_days": "Days between routine visits",
            "routine_cows": "Cows at a routine visit",
            "rest_after_milking_minutes": "Rest after milking, minutes",
            "crush_place": "Crush",
            "hygiene_level": "Hygiene",
            "hygiene_reason": "Why that hygiene",
            "wash_rule": "The farm’s own wash rule",
            "is_active": "On the round",
        }
        # The labels say it already.
        help_texts = {"herd_size": "", "routine_interval_days": "", "routine_cows": ""}

    def __init__(self, *args: object, scope: Scope, **kwargs: object) -> None:
        super().__init__(*args, **kwargs)
        self.fields["payer"].queryset = Payer.objects.within(scope)  # type: ignore[attr-defined]
        self.fields["payer"].empty_label = "the farm itself"  # type: ignore[attr-defined]

    def _get_validation_exclusions(self) -> set[str]:
        # The business is set by the page, so that one name is kept once within it.
        return super()._get_validation_exclusions() - {"business"}  # type: ignore[misc, no-any-return]


class MilkingForm(SeenForm, forms.Form):
    """Two or three milkings a day, the same every day; single days differ rarely enough to be told by phone."""

    first = forms.TimeField(
        label="First milking", widget=forms.TimeInput(attrs={"type": "time"}), required=False
    )
    second = forms.TimeField(
        label="Second milking", widget=forms.TimeInput(attrs={"type": "time"}), required=False
    )
    third = forms.TimeField(
        label="Third milking", widget=forms.TimeInput(attrs={"type": "time"}), required=False
    )
    minutes = forms.IntegerField(label="Each takes, minutes", min_value=5, max_value=720, initial=150)


class CowForm(SeenForm, CowModelForm):
    official_tag = forms.CharField(
        max_length=20, required=False, help_text="As printed; blanks do not matter."
    )
    electronic_id = forms.CharField(max_length=20, required=False, help_text="15 digits.")
    freeze_brand = forms.CharField(max_length=20, required=False)
    collar = forms.CharField(max_length=20, required=False)
    lactation = forms.IntegerField(
        min_value=1,
        max_value=HIGHEST_LACTATION,
        required=False,
        help_text="The one that her last calving began; 1 after the first calf.",
    )
    field_order = ["number", "status", "left_on", "born_on", "calved_on", "lactation"]

    class Meta:
        model = Cow
        fields = ["number", "status", "left_on", "born_on", "calved_on", "calving_due", "dry_off_due", "note"]
        labels = {"left_on": "Sold or dead on", "calved_on": "Last calved on"}
        help_texts = {"left_on": ""}
        widgets = {"left_on": DAY, "born_on": DAY, "calved_on": DAY, "calving_due": DAY, "dry_off_due": DAY}

    def clean(self) -> dict[str, object]:
        told: dict[str, object] = super().clean() or self.cleaned_data
        status = told.get("status")
        if told.get("left_on") and isinstance(status, str) and CowStatus(status).is_on_farm:
            self.add_error("left_on", "Choose as status whether she was sold or is dead.")
        if told.get("lactation") and not told.get("calved_on"):
            self.add_error("calved_on", "Give the calving that this lactation began with.")
        return told


class HerdListForm(forms.Form):
    herd_list = NamedFileField(
        endings=TABLES,
        label="Herd list",
        help_text="CSV or XLSX with a row of headings; one is “number”. Nothing changes before you have looked.",
        widget=forms.ClearableFileInput(attrs={"accept": ".csv,.txt,.tsv,.xlsx"}),
    )

    def clean_herd_list(self) -> "UploadedFile[bytes]":
        """Refused by its size before it is read: a film would fill the memory."""
        told: UploadedFile[bytes] = self.cleaned_data["herd_list"]
        if (told.size or 0) > MOST_BYTES:
            raise forms.ValidationError(
                "The file is larger than 5 MB: split it, or save only the list of cows."
            )
        return told


class FindForm(forms.Form):
    q = forms.CharField(label="Find", required=False, max_length=60)
