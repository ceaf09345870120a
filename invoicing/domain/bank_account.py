"""A bank account as people type it, made clean or refused with what is wrong (ISO 13616, ISO 9362)."""

import re

from stdnum import iban
from stdnum.exceptions import InvalidChecksum, InvalidComponent, InvalidFormat, ValidationError

_SHORTEST, _LONGEST = 15, 34
_BIC = re.compile(r"[A-Z]{4}[A-Z]{2}[A-Z0-9]{2}([A-Z0-9]{3})?")
_WRONG: dict[type[ValidationError], str] = {
    InvalidChecksum: "The IBAN has a typing mistake: its check digits do not fit.",
    InvalidComponent: "The IBAN does not begin with a country that has IBANs.",
    InvalidFormat: "The IBAN is not built as its country builds them.",
}


def clean_iban(text: str) -> str:
    """Capitals without blanks. ValueError says what is wrong.

    The country's own check inside (Belgium, Spain ...) is left out: it refuses accounts that exist, and the two check
    digits of ISO 13616 find every single slip.
    """
    packed = without_blanks(text)
    if not packed:
        raise ValueError("The IBAN is empty.")
    if not (packed.isascii() and packed.isalnum()):
        raise ValueError("An IBAN is made of letters and digits only.")
    if not _SHORTEST <= len(packed) <= _LONGEST:
        raise ValueError(f"An IBAN has {_SHORTEST} to {_LONGEST} signs; this one has {len(packed)}.")
    try:
        clean: str = iban.validate(packed, check_country=False)
    except ValidationError as fault:
        raise ValueError(_WRONG.get(type(fault), "The IBAN is not one.")) from fault
    return clean


def clean_bic(text: str) -> str:
    """Capitals without blanks: bank, country, place and, if given, branch (8 or 11 signs). ValueError if it is not."""
    packed = without_blanks(text)
    if not _BIC.fullmatch(packed):
        raise ValueError(
            "A BIC has 8 or 11 signs: four letters, two of the country, two, and three of the branch."
        )
    return packed


def without_blanks(account: str) -> str:
    """By what two writings of one account are known to be the same."""
    return "".join(account.split()).upper()


def in_fours(text: str) -> str:
    """An IBAN or an ISO 11649 reference as it is printed: "GB29 NWBK 6016 1331 9268 19", "RF18 5390 0754 7034"."""
    packed = "".join(text.split())
    return " ".join(packed[start : start + 4] for start in range(0, len(packed), 4))
