"""A field of a form that takes a file and holds its name against what is in it."""

from collections.abc import Collection

from django import forms
from django.core.files.uploadedfile import UploadedFile

from trimops.kernel.file_kinds import HEAD, ending_fault


class NamedFileField(forms.FileField):
    """`endings` as in `trimops.kernel.file_kinds`. Only the first bytes are read; the file is wound back."""

    def __init__(self, *, endings: Collection[str], **said: object) -> None:
        super().__init__(**said)  # type: ignore[arg-type]
        self.endings = endings

    def clean(self, data: object, initial: object = None) -> object:
        told = super().clean(data, initial)
        if isinstance(told, UploadedFile):
            head = told.read(HEAD)
            told.seek(0)
            if fault := ending_fault(told.name or "", head, self.endings):
                raise forms.ValidationError(fault)
        return told
