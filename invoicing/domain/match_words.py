"""Numbers, references and names as people type them into a bank form."""

import re
import unicodedata
from collections.abc import Container, Iterator

# Said of many: no name by themselves. Our own list, no source.
_COMMON_WORDS = """
    ltd limited llp plc gmbh kg ohg gbr bv vof sarl sas eurl earl gaec aps as ab oy inc co company
    and und en et the mr mrs ms miss dr herr frau family familie farm farms farming hof gut ferme
    boerderij dairy partners partnership sons son brothers bros de der den van von la le du di
"""
COMMON_WORDS = frozenset(_COMMON_WORDS.split())
_LETTERS = str.maketrans({"ø": "o", "æ": "ae", "ß": "ss", "ł": "l", "đ": "d", "œ": "oe", "þ": "th"})
_REFERENCE = re.compile(r"RF\d\d")


def name_words(name: str) -> frozenset[str]:
    """The words of a name that tell it from others: small letters without accents, common words left out."""
    plain = unicodedata.normalize("NFKD", name.casefold().translate(_LETTERS))
    plain = "".join(sign for sign in plain if not unicodedata.combining(sign))
    words = frozenset(re.findall(r"[a-z0-9]+", plain))
    return words - COMMON_WORDS or words


def digit_keys(number: str) -> set[str]:
    """By which runs of digits a number may be found: INV-2026-0042 by "0042" and "20260042"."""
    runs = re.findall(r"\d+", number)
    return {runs[-1], "".join(runs)} if runs else set()


def digit_runs(text: str) -> set[str]:
    return set(re.findall(r"\d+", text))


def has_number(text: str, number: str) -> bool:
    """Whether the number stands in the text, whatever signs part its letters and digits."""
    runs = re.findall(r"[A-Z]+|\d+", number.upper())
    pattern = r"[\W_]*".join(runs)
    return bool(runs) and re.search(rf"(?<![A-Z0-9]){pattern}(?!\d)", text.upper()) is not None


def has_tail(text: str, number: str) -> bool:
    """Whether its digits stand in the text without the prefix: "2026/0042", or the last four or more: "0042"."""
    runs = re.findall(r"\d+", number)
    tails = [runs, runs[-1:]]
    patterns = [r"[\W_]?".join(tail) for tail in tails if len("".join(tail)) >= 4]
    return any(re.search(rf"(?<!\d){pattern}(?!\d)", text) is not None for pattern in patterns)


def references_in(text: str, known: Container[str]) -> Iterator[str]:
    """The longest known creditor reference at each place of the text where one begins; blanks within do not matter."""
    packed = re.sub(r"[^A-Z0-9]", "", text.upper())
    for found in _REFERENCE.finditer(packed):
        for length in range(25, 4, -1):
            if (told := packed[found.start() : found.start() + length]) in known:
                yield told
                break
