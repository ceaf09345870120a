"""Many files in one."""

import io
import zipfile
from datetime import datetime

from visits.documents.packed_files import pack_into, packed

FILES = [("cows.csv", b"Number\r\n101\r\n" * 50), ("photos/a.jpg", b"\xff\xd8" * 100)]


def test_every_file_comes_out_as_it_went_in():
    with zipfile.ZipFile(io.BytesIO(packed(FILES))) as parts:
        assert parts.testzip() is None
        assert [(name, parts.read(name)) for name in parts.namelist()] == FILES


def test_the_same_files_make_the_same_bytes():
    assert packed(FILES) == packed(iter(FILES))


def test_the_moment_is_the_one_given():
    out = io.BytesIO()
    pack_into(out, FILES, datetime(2026, 3, 2, 12, 30, 4))  # noqa: DTZ001
    with zipfile.ZipFile(out) as parts:
        assert {part.date_time for part in parts.infolist()} == {(2026, 3, 2, 12, 30, 4)}


def test_text_is_packed_and_a_photo_is_not_packed_twice():
    with zipfile.ZipFile(io.BytesIO(packed(FILES))) as parts:
        text, photo = parts.infolist()
    assert text.compress_size < text.file_size
    assert photo.compress_size == photo.file_size


def test_files_are_taken_one_after_the_other():
    taken = []

    def files():
        for name, content in FILES:
            taken.append((name, out.tell()))
            yield name, content

    out = io.BytesIO()
    pack_into(out, files())
    assert taken[0][1] == 0
    assert taken[1][1] > 0
