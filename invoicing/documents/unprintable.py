"""Letters that no face of our papers has: an archive refuses a paper with an empty box in it."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from itertools import islice

from trimops.paper.typefaces import BODY, BOLD, STAND_IN, letters_of
from trimops.paper.wording import clean

MOST_TOLD = 3
_ABOUT = 60


def unprintable_words(paper: object) -> Iterator[str]:
    """A sentence for each text in a content (a dataclass, and what it holds) that cannot be printed; three at most."""
    return islice((_fault(text) for text in _texts(paper) if _lacking(text)), MOST_TOLD)


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _texts(part)
    elif is_dataclass(value):
        for field in fields(value):
            yield from _texts(getattr(value, field.name))


def _lacking(text: str) -> str:
    """The first letter that some face lacks, as its stand-in does."""
    return next((letter for letter in _drawn(text) if not _has(ord(letter))), "")


def _drawn(text: str) -> str:
    return "" if text.isascii() else clean(text).replace("\n", "")


def _has(code: int) -> bool:
    return all(code in letters_of(face) or code in letters_of(STAND_IN[face]) for face in (BODY, BOLD))


def _fault(text: str) -> str:
    shown = " ".join(text.split())[:_ABOUT]
    return f"“{shown}” holds a sign that our papers cannot print ({_lacking(text)}): write it otherwise."
