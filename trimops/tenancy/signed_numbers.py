"""Short signed words for addresses in an SMS: they name rows by number, and nobody can make one up.

    word = signed_numbers("stop", 12)      # "c-…22 letters…"
    numbers_of("stop", word)               # (12,)

128 bits of HMAC-SHA-256 under the secret key; no database is asked.
"""

import base64

from django.utils.crypto import constant_time_compare, salted_hmac

BYTES = 16
BASE = 36
_DIGITS = "0123456789abcdefghijklmnopqrstuvwxyz"


def signed_numbers(what: str, *numbers: int) -> str:
    """The word for `numbers` (0 or more each); `what` keeps words for one thing from opening another."""
    plain = ".".join(_to_base(number) for number in numbers)
    return f"{plain}-{_seal(what, plain)}"


def numbers_of(what: str, word: str) -> tuple[int, ...] | None:
    """The numbers of a word that `signed_numbers` made for this `what`; None for any other text."""
    plain, _, seal = word.partition("-")
    if not plain or not constant_time_compare(_seal(what, plain), seal):
        return None
    return tuple(int(part, BASE) for part in plain.split("."))


def _seal(what: str, plain: str) -> str:
    digest = salted_hmac(f"trimops {what}", plain, algorithm="sha256").digest()[:BYTES]
    return base64.urlsafe_b64encode(digest).decode().rstrip("=")


def _to_base(number: int) -> str:
    if number < 0:
        raise ValueError("numbers of rows are not below 0")
    digits = ""
    while True:
        number, rest = divmod(number, BASE)
        digits = _DIGITS[rest] + digits
        if not number:
            return digits
