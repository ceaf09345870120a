from dataclasses import dataclass

import pytest

from invoicing.documents.unprintable import MOST_TOLD, unprintable_words


@dataclass(frozen=True)
class Sheet:
    name: str
    lines: tuple[object, ...] = ()
    logo: bytes | None = None


@pytest.mark.parametrize(
    "text", ["Ærøgården", "Ελ", "Żółw", "a\x0bb", "x\u202ey", "1 000\u202f€", "W\u0302yl", "one\ntwo"]
)
def test_what_our_faces_draw(text):
    assert list(unprintable_words(Sheet(text))) == []


@pytest.mark.parametrize("sign", ["\U0001f404", "\ue000", "\ufffe", "牛"])
def test_a_sign_that_no_face_has_is_named_wherever_it_stands(sign):
    (words,) = unprintable_words(
        Sheet("Low Croft", (Sheet("fine"), ("Trim", f"the {sign} of the year"), None))
    )
    assert f"({sign})" in words
    assert "of the year" in words


def test_a_hundred_of_them_are_not_all_told():
    assert len(list(unprintable_words(Sheet("", ("\U0001f404",) * 100)))) == MOST_TOLD
