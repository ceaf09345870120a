"""The key under a herd picture: a sign and its words, one after the other, on as many lines as they need."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from trimops.paper.drawing import Point, Shape, Text
from trimops.paper.fitting import fitting
from trimops.paper.typefaces import BODY, width_of
from visits.documents.herd.marks import WORDS

LINE = 5.4
_SIGN_ROOM = 4.4
_GAP = 3.5


@dataclass(frozen=True)
class KeyItem:
    """`sign` draws about a middle; `words` stand beside it."""

    sign: Callable[[Point], Sequence[Shape]]
    words: str


def key(items: Sequence[KeyItem], top: float, width: float) -> tuple[list[Shape], float]:
    """The shapes, and where they end."""
    shapes: list[Shape] = []
    x, middle = 0.0, top + LINE / 2
    for item in items:
        words = fitting(item.words, width - _SIGN_ROOM, WORDS)
        room = _SIGN_ROOM + width_of(words, BODY, WORDS)
        if x and x + room > width:
            x, middle = 0.0, middle + LINE
        shapes += item.sign((x + 1.6, middle))
        shapes.append(Text((x + _SIGN_ROOM, middle + WORDS * 0.35), words, WORDS))
        x += room + _GAP
    return shapes, middle + LINE / 2 if items else top
