"""Forms of the bank: a file, and which column of a CSV holds what."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict

from django import forms
from django.core.exceptions import ValidationError
from django.core.files.base import File
from django.http import QueryDict

from invoicing.domain.bank_csv import DAY_FORMATS, DELIMITERS, ENCODINGS, CsvMapping
from invoicing.domain.bank_file import MOST_BYTES
from trimops.kernel.file_kinds import STATEMENTS
from trimops.web.file_field import NamedFileField

NONE = ""
WRITING = ("encoding", "delimiter", "decimal", "day_format", "header_rows", "footer_rows")
WORDS = ("credit_word", "debit_word")
COLUMNS = (
    ("day", "Day of booking", True),
    ("amount", "Amount, with its sign", False),
    ("credit", "Or: money in", False),
    ("debit", "Or: money out", False),
    ("mark", "Column that says in or out", False),
    ("party", "Who paid", False),
    ("account", "Their account", False),
    ("reference", "Payment reference", False),
    ("bank_reference", "The bank's own reference", False),
)
_DELIMITER_WORDS = {";": "Semicolon ;", ",": "Comma ,", "\t": "Tab", "|": "Bar |"}
_ENCODING_WORDS = {"utf-8-sig": "UTF-8", "cp1252": "Windows (Western Europe)", "utf-16": "UTF-16"}


class BankFileForm(forms.Form):
    """A statement as the bank gives it."""

    file = NamedFileField(
        endings=STATEMENTS, label="Statement", help_text="CAMT.053 (XML) or CSV, up to 5 MB."
    )

    def clean_file(self) -> File:  # type: ignore[type-arg]
        """Refused by its size before it is read: a film would fill the memory."""
        told: File = self.cleaned_data["file"]  # type: ignore[type-arg]
        if told.size > MOST_BYTES:
            raise ValidationError("The file is larger than 5 MB: ask the bank for shorter periods.")
        return told


class MappingForm(forms.Form):
    """How a bank writes its CSV. `columns` are the heads to choose from, by number."""

    encoding = forms.ChoiceField(
        label="Letters", choices=[(code, _ENCODING_WORDS[code]) for code in ENCODINGS]
    )
    delimiter = forms.ChoiceField(
        label="Columns are parted by",
        choices=[(sign, _DELIMITER_WORDS[sign]) for sign in DELIMITERS],
    )
    decimal = forms.ChoiceField(
        label="Decimals after", choices=[(",", "a comma: 12,50"), (".", "a point: 12.50")]
    )
    day_format = forms.ChoiceField(label="Days are written like", choices=list(DAY_FORMATS.items()))
    header_rows = forms.IntegerField(label="Rows of heads above", min_value=0, max_value=50)
    footer_rows = forms.IntegerField(label="Rows of sums below", min_value=0, max_value=50)
    credit_word = forms.CharField(label="Word for in", required=False, max_length=20)
    debit_word = forms.CharField(label="Word for out", required=False, max_length=20)
    name = forms.CharField(
        label="Keep this as", required=False, max_length=60, help_text="Chosen at once for the next file."
    )

    def __init__(
        self,
        columns: Sequence[str],
        data: QueryDict | None = None,
        *,
        initial: Mapping[str, object] | None = None,
    ) -> None:
        super().__init__(data, initial=dict(initial or {}))
        choices = [(str(n), f"{n + 1}: {head}"[:60]) for n, head in enumerate(columns)]
        for name, label, is_needed in COLUMNS:
            options = choices if is_needed else [(NONE, "none"), *choices]
            self.fields[name] = forms.ChoiceField(label=label, choices=options, required=is_needed)
        self.fields["text"] = forms.MultipleChoiceField(
            label="What for", choices=choices, required=False, widget=forms.CheckboxSelectMultiple
        )
        self.order_fields([*WRITING, *(name for name, *_ in COLUMNS), *WORDS, "text", "name"])

    def mapping(self) -> CsvMapping:
        """What was put down, once the form is valid."""
        told = self.cleaned_data
        parts = {name: told[name] for name in (*WRITING, *WORDS)}
        parts |= {name: int(told[name]) for name, *_ in COLUMNS if told[name] != NONE}
        return CsvMapping(**parts, text=tuple(int(column) for column in told["text"]))


def initial_of(mapping: CsvMapping, name: str = "") -> dict[str, object]:
    """A mapping as the form's first values."""
    told: dict[str, object] = {
        key: NONE if value is None else value for key, value in asdict(mapping).items()
    }
    return {**told, "text": [str(column) for column in mapping.text], "name": name}
