"""Every file that a page takes is held against its name."""

import pytest
from django import forms
from django.core.files.uploadedfile import SimpleUploadedFile

from tests.architecture.source_tree import name_of, product_files
from trimops.kernel.file_kinds import TABLES
from trimops.web.file_field import NamedFileField


class Some(forms.Form):
    file = NamedFileField(endings=TABLES, required=False)


def filled(name, content):
    return Some({}, {"file": SimpleUploadedFile(name, content)})


def test_a_file_that_is_what_it_is_called_comes_whole():
    form = filled("herd.csv", b"number\n" + b"1\n" * 2_000)
    assert form.is_valid(), form.errors
    assert len(form.cleaned_data["file"].read()) == 4_007
    assert Some({}, {}).is_valid()


@pytest.mark.parametrize("name", ["herd.csv", "herd.exe"])
def test_any_other_is_told_beside_the_field(name):
    assert "The name ends in" in str(filled(name, b"%PDF-1.7").errors["file"])


def test_no_page_takes_a_file_by_any_other_field():
    kinds = ("forms.FileField", "forms.ImageField", "MultipleFileField")
    found = [
        name_of(path)
        for path in product_files()
        if path.name != "file_field.py" and any(f"{kind}(" in path.read_text() for kind in kinds)
    ]
    assert found == []
