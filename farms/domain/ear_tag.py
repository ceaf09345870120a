"""Official ear tags: one written form, and a hint where a tag looks misread.

Forms: trade-facts 6.2 and 6.3 (Implementing Regulation (EU) 2021/520 art. 12: country as two letters or three
digits, then up to 12 digits). Check digit of UK numeric tags: widely published, not found as statute: N =
herd mark x 100000 + animal number, check = N mod 7 + 1. It misses swaps that differ by seven (0 and 7, 1 and
8, 2 and 9), and tags of cattle born before July 2000 may carry letters, so a tag is never refused for it.
"""

import re
from dataclasses import dataclass

_JOINTS = re.compile(r"[\s.\-/_]+")
_LETTERS_FIRST = re.compile(r"^([A-Z]{2})([A-Z0-9]{1,12})$")
_DIGITS_FIRST = re.compile(r"^(\d{3})(\d{10,12})$")
_BARE = re.compile(r"^\d{12}$")
_UK_NUMERIC = re.compile(r"^(\d{6})([1-7])(\d{5})$")
_SAME_COUNTRY = {"GB": "UK", "GR": "EL"}
_TAG_COUNTRIES = re.compile(
    "AT|B[EG]|C[HYZ]|D[EK]|E[ELS]|F[IR]|H[RU]|I[EST]|L[ITUV]|MT|N[LO]|P[LT]|RO|S[EIK]|UK|XI"
)


class UnreadableTag(ValueError):
    """What was written has none of the forms of an official tag; the message says what to mend."""


@dataclass(frozen=True)
class EarTag:
    """An official tag: `country` is two letters or three digits, `code` up to 12 letters or digits."""

    country: str
    code: str

    @property
    def text(self) -> str:
        """The one form that is kept and compared, without spaces: UK123450600001."""
        return self.country + self.code

    @property
    def display(self) -> str:
        """The form for eyes: a space after the country, and after the herd mark of a UK numeric tag."""
        if self.is_uk_numeric:
            return f"{self.country} {self.code[:6]} {self.code[6:]}"
        return f"{self.country} {self.code}"

    @property
    def is_uk_numeric(self) -> bool:
        return self.country == "UK" and len(self.code) == 12 and self.code.isdigit()

    @property
    def hint(self) -> str:
        """What looks wrong, in words; empty when nothing does. A hint never stops anything."""
        if self.country == "UK":
            return _uk_hint(self.code)
        if self.country.isdigit():
            return "starts with a country number: is this the electronic id?"
        if not _TAG_COUNTRIES.fullmatch(self.country):
            return f"{self.country} is not a country whose tags we know"
        return "" if self.code.isdigit() else "letters after the country: check it was read right"


def read_ear_tag(text: str, home_country: str = "UK") -> EarTag:
    """Read a tag however it was spaced or punctuated.

    Twelve bare digits are taken for a tag of `home_country`; GB is written UK and GR is written EL, as on
    tags. Raises UnreadableTag.
    """
    bare = _JOINTS.sub("", text.strip().upper())
    if _BARE.match(bare):
        return EarTag(home_country, bare)
    for form in (_LETTERS_FIRST, _DIGITS_FIRST):
        if found := form.match(bare):
            return EarTag(_SAME_COUNTRY.get(found[1], found[1]), found[2])
    raise UnreadableTag(f"{text.strip()!r} is not an official tag: country, then up to 12 figures")


def uk_check_digit(herd_mark: int, animal: int) -> int:
    """The check digit, 1 to 7, between a six-figure herd mark and a five-figure animal number."""
    return (herd_mark * 100_000 + animal) % 7 + 1


def _uk_hint(code: str) -> str:
    if not code.isdigit():
        return "letters in a UK tag: only cattle born before July 2000 carry them"
    if len(code) != 12:
        return f"a UK tag has 12 figures after the letters, this has {len(code)}"
    expected = uk_check_digit(int(code[:6]), int(code[7:]))
    found = _UK_NUMERIC.match(code)
    return "" if found and int(found[2]) == expected else f"check digit does not fit: expected {expected}"


def normalise_ear_tag(text: str) -> str:
    """The kept form of a tag; what has none of the known forms comes back in capitals, without joints."""
    try:
        return read_ear_tag(text).text
    except UnreadableTag:
        return _JOINTS.sub("", text.strip().upper())


def ear_tag_hint(text: str) -> str:
    """What looks wrong with a tag, in words; empty when nothing does. Warns, never blocks."""
    try:
        return read_ear_tag(text).hint
    except UnreadableTag:
        return "is not the form of an official tag: country, then up to 12 figures"


def ear_tag_display(text: str) -> str:
    """A kept tag for eyes, spaced; what has none of the known forms stays as it is."""
    try:
        return read_ear_tag(text).display
    except UnreadableTag:
        return text
