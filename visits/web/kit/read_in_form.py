"""The form for a list of consumables: a file, whose lines are then shown to be mended, or lines typed or pasted."""

import csv
import io
from collections.abc import Mapping, Sequence
from uuid import UUID, uuid4

from django import forms
from django.core.files.uploadedfile import UploadedFile
from django.http import QueryDict
from django.utils.datastructures import MultiValueDict

from farms.domain.herd_table import MOST_BYTES, UnreadableHerdList, read_table
from trimops.kernel.file_kinds import TABLES
from trimops.web.file_field import NamedFileField

MOST_LETTERS = 200_000
NO_TABLE = (
    "This cannot be read as a list. Save it as CSV or XLSX, at most 5 MB, with a row of headings and a consumable on "
    "each line below."
)


class ReadInForm(forms.Form):
    """Whichever way it came, `lines` holds it as CSV, so that it can be mended where it stands."""

    all_may_stay_empty = True

    uid = forms.UUIDField(widget=forms.HiddenInput)
    file = NamedFileField(
        endings=TABLES,
        label="A file",
        required=False,
        help_text="CSV or XLSX with a row of headings.",
        widget=forms.FileInput(attrs={"accept": ".csv,.txt,.tsv,.xlsx"}),
    )
    lines = forms.CharField(
        label="Or its lines",
        widget=forms.Textarea(attrs={"rows": 10, "class": "tall", "spellcheck": "false"}),
        required=False,
        max_length=MOST_LETTERS,
        help_text="The headings first, then a line for each; parted by commas, semicolons or tabs.",
    )

    def __init__(
        self,
        data: QueryDict | None = None,
        files: "MultiValueDict[str, UploadedFile[bytes]] | None" = None,
        *,
        initial: Mapping[str, object] | None = None,
    ) -> None:
        copied = data.copy() if data is not None else None
        super().__init__(copied, files, initial={"uid": uuid4(), **(initial or {})})
        self.table: list[list[str]] = []

    def clean_file(self) -> "UploadedFile[bytes] | None":
        upload: UploadedFile[bytes] | None = self.cleaned_data["file"]
        if upload is None:
            return None
        if (upload.size or 0) > MOST_BYTES:
            raise forms.ValidationError(NO_TABLE)
        self.table = _table(upload.read())
        self.data["lines"] = csv_lines(self.table)  # type: ignore[index]  # because: it is a copy, see __init__
        return upload

    def clean_lines(self) -> str:
        """A file goes before what stands in the lines."""
        text: str = self.cleaned_data["lines"]
        if not self.cleaned_data.get("file") and "file" not in self.errors:
            if not text.strip():
                raise forms.ValidationError("Choose a file, or paste its lines.")
            self.table = _table(text.encode())
        return text

    @property
    def uid_said(self) -> UUID:
        uid: UUID = self.cleaned_data["uid"]
        return uid


def _table(content: bytes) -> list[list[str]]:
    try:
        return read_table(content)
    except UnreadableHerdList as fault:
        raise forms.ValidationError(NO_TABLE) from fault


def csv_lines(table: Sequence[Sequence[str]]) -> str:
    """A table as lines of CSV, an empty line for an empty row, so that lines count as the file shows them."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerows(table)
    return out.getvalue()
