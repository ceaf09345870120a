"""A picture as a phone sends it. Marks of the format: ISO/IEC 10918-1, annex B."""

import pytest

from visits.domain.jpeg_picture import MOST_PICTURE_BYTES, picture_fault

HEAD, TAIL = b"\xff\xd8\xff\xe0", b"\xff\xd9"


def test_a_jpeg_is_taken():
    assert picture_fault(HEAD + b"feet" + TAIL) == ""


def test_a_jpeg_padded_by_the_camera_is_taken():
    assert picture_fault(HEAD + b"feet" + TAIL + b"\x00\x00") == ""


@pytest.mark.parametrize(
    ("picture", "words"),
    [
        (b"", "no JPEG"),
        (b"\x89PNG\r\n" + TAIL, "no JPEG"),
        (b"<svg/>", "no JPEG"),
        (HEAD + b"half a foot", "cut off"),
        (HEAD + b"x" * MOST_PICTURE_BYTES + TAIL, "larger than 262144 bytes"),
    ],
)
def test_anything_else_is_not(picture, words):
    assert words in picture_fault(picture)
