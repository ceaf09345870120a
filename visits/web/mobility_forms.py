"""The form for a round of mobility scores: typed lines, or a file whose lines are then shown in their place."""

from django import forms
from django.core.files.uploadedfile import UploadedFile
from django.http import QueryDict
from django.utils.datastructures import MultiValueDict

from farms.domain.herd_table import MOST_BYTES, UnreadableHerdList, read_table
from farms.models import Farm
from trimops.kernel.choices import choices_of
from trimops.kernel.file_kinds import TABLES
from trimops.web.day_input import DAY
from trimops.web.file_field import NamedFileField
from visits.domain.mobility import MobilityScale
from visits.domain.score_lines import ScoreLine, lines_of_table, read_score_lines
from visits.selectors.herd_numbers import herd_numbers
from visits.services.note_scores import CowScore, ScoringWord

MOST_LETTERS = 200_000


class ScoresForm(forms.Form):
    """What is wrong is said line by line, and nothing is kept until each line is mended or left out on purpose."""

    all_may_stay_empty = True

    scored_on = forms.DateField(label="Scored on", widget=DAY)
    scale = forms.ChoiceField(
        label="Score sheet", choices=choices_of(MobilityScale), initial=MobilityScale.UK.value
    )
    scored_by = forms.CharField(label="Who scored", max_length=120, required=False)
    whole_herd = forms.BooleanField(label="Every cow in milk was looked at, lame or not", required=False)
    lines = forms.CharField(
        label="Cows and scores",
        widget=forms.Textarea(attrs={"rows": 10}),
        required=False,
        max_length=MOST_LETTERS,
        help_text="A cow a line: her number, then her score, such as 412 2.",
    )
    file = NamedFileField(
        endings=TABLES,
        label="Or a file",
        required=False,
        help_text="CSV or XLSX with a row of headings, two of them “cow” and “score”.",
        widget=forms.FileInput(attrs={"accept": ".csv,.txt,.tsv,.xlsx"}),
    )
    leave_out = forms.BooleanField(
        label="Leave the lines named above out and keep the others",
        required=False,
        widget=forms.HiddenInput,
    )

    def __init__(
        self,
        data: QueryDict | None = None,
        files: "MultiValueDict[str, UploadedFile[bytes]] | None" = None,
        *,
        farm: Farm,
        initial: dict[str, object] | None = None,
    ) -> None:
        super().__init__(data.copy() if data is not None else None, files, initial=initial)
        self.farm = farm
        self.read: list[ScoreLine] = []

    @property
    def faulty(self) -> list[ScoreLine]:
        """Lines that cannot be kept, each with what is wrong with it."""
        return [line for line in self.read if line.fault]

    @property
    def good(self) -> list[ScoreLine]:
        return [line for line in self.read if not line.fault]

    def clean_file(self) -> "UploadedFile[bytes] | None":
        """Its lines take the place of those typed, so that they are still there when something is to mend."""
        upload: UploadedFile[bytes] | None = self.cleaned_data["file"]
        if upload is None:
            return None
        if (upload.size or 0) > MOST_BYTES:
            raise forms.ValidationError("The file is larger than 5 MB: save only cows and scores.")
        try:
            lines = lines_of_table(read_table(upload.read()))
        except UnreadableHerdList as fault:
            raise forms.ValidationError(str(fault)) from fault
        self.cleaned_data["lines"] = lines
        self.data["lines"] = lines  # type: ignore[index]  # because: it is a copy, see __init__
        return upload

    def clean(self) -> None:
        super().clean()
        text, scale = self.cleaned_data.get("lines"), self.cleaned_data.get("scale")
        if not scale or "lines" in self.errors or "file" in self.errors:
            return
        if not text:
            self.add_error("lines", "Give a cow and her score a line, or choose a file.")
            return
        self.read = read_score_lines(text, MobilityScale(scale), herd_numbers(self.farm))
        if not self.good:
            self.add_error("lines", "None of these lines can be kept: mend them.")
        elif self.faulty and not self.cleaned_data.get("leave_out"):
            self.add_error("lines", "Some lines cannot be kept: mend them, or leave them out.")

    def word(self) -> ScoringWord:
        """The round, once the form is valid."""
        data = self.cleaned_data
        scores = [CowScore(line.cow_id or 0, line.score or 0) for line in self.good]
        return ScoringWord(
            data["scored_on"], MobilityScale(data["scale"]), scores, data["scored_by"], data["whole_herd"]
        )
