"""The two faces of our papers, embedded; and a stand-in face for letters they lack."""

from functools import cache
from pathlib import Path
from threading import RLock
from typing import Final

from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

BODY: Final = "Atkinson"
BOLD: Final = "Atkinson-Bold"
STAND_IN: Final = {BODY: "StandIn", BOLD: "StandIn-Bold"}

_FILES: Final = {
    BODY: "atkinson-tabular-regular.ttf",
    BOLD: "atkinson-tabular-bold.ttf",
    "StandIn": "noto-cut-regular.ttf",
    "StandIn-Bold": "noto-cut-bold.ttf",
}
_FOLDER: Final = Path(__file__).parent / "fonts"

# because: the PDF writer reads a face's file at a place that it keeps in the face, and all threads share the faces. Two
# papers drawn at once broke one of them, or gave it other letters; of one interpreter only one thread draws anyway.
ONE_DRAWS: Final = RLock()


@cache
def register_typefaces() -> None:
    """Make the four faces known to the PDF writer, once a process."""
    with ONE_DRAWS:
        for name in _FILES:
            pdfmetrics.registerFont(_cut(name))
        for plain, bold in ((BODY, BOLD), ("StandIn", "StandIn-Bold")):
            pdfmetrics.registerFontFamily(plain, normal=plain, bold=bold, italic=plain, boldItalic=bold)


@cache
def _cut(name: str) -> TTFont:
    return TTFont(name, str(_FOLDER / _FILES[name]))


@cache
def letters_of(face: str) -> frozenset[int]:
    """The code points that a face can draw."""
    register_typefaces()
    return frozenset(_cut(face).face.charToGlyph)


def width_of(text: str, face: str, size: float) -> float:
    """How wide `text` is set in one line, in the unit of `size` (points or millimetres).

    Letters that the face lacks are counted in the stand-in face.
    """
    return sum(pdfmetrics.stringWidth(run, name, size) for name, run in runs_of(text, face))


def runs_of(text: str, face: str) -> list[tuple[str, str]]:
    """`text` as (face, run) pieces: the face itself wherever it has the letter, else its stand-in.

    A letter that neither face has stays with the face and is drawn as its empty box: it is never dropped.
    """
    own, other = letters_of(face), letters_of(STAND_IN[face])
    if text and own.issuperset(map(ord, text)):
        return [(face, text)]
    runs: list[tuple[str, str]] = []
    for letter in text:
        is_lent = ord(letter) not in own and ord(letter) in other
        name = STAND_IN[face] if is_lent else face
        if runs and runs[-1][0] == name:
            runs[-1] = (name, runs[-1][1] + letter)
        else:
            runs.append((name, letter))
    return runs
