"""Texts with named places: `We come to {farm} on {day}.` A place is filled once, what is put there is never read again.

No more than that: nothing in a text is run.
"""

import re
from collections.abc import Collection, Mapping

from trimops.kernel.errors import FieldRefused

_PIECE = re.compile(r"\{([^{}\n]*)\}")
_BRACE = re.compile(r"[{}]")


class TextMakesNoSense(FieldRefused):
    """A place that is not closed, or that there is none of."""

    code = "text_makes_no_sense"


def check_text(text: str, places: Collection[str], field: str = "", needs: Collection[str] = ()) -> None:
    """TextMakesNoSense unless every brace belongs to one of `places` and each of `needs` is there; the message says
    which is missing or unknown, and what there is. An empty text is none and may be.
    """
    for name in _PIECE.findall(text):
        if name not in places:
            known = ", ".join(f"{{{place}}}" for place in places)
            raise TextMakesNoSense(field, f"There is no {{{name}}} here. This text may use: {known}.")
    stray = _BRACE.search(_PIECE.sub(lambda found: " " * len(found.group()), text))
    if stray is not None:
        near = text[max(0, stray.start() - 12) : stray.start() + 13].strip()
        raise TextMakesNoSense(
            field, f"A brace stands alone near “{near}”: write places as {{farm}}, closed."
        )
    missing = [place for place in needs if text.strip() and place not in places_used(text)]
    if missing:
        raise TextMakesNoSense(
            field, f"Put {{{missing[0]}}} somewhere: without it the message leads nowhere."
        )


def fill(text: str, values: Mapping[str, str]) -> str:
    """The text with its places filled. KeyError for a place without a value: check_text refuses it before."""
    return _PIECE.sub(lambda found: values[found.group(1)], text)


def tidy(text: str) -> str:
    """Without blanks left by a place that had nothing to say: none at a line's end, no two in a row."""
    lines = (re.sub(r"[ \t]{2,}", " ", line).strip() for line in text.splitlines())
    return re.sub(r"\n{3,}", "\n\n", "\n".join(lines)).strip()


def places_used(text: str) -> set[str]:
    """Names of the places in it."""
    return set(_PIECE.findall(text))
