"""Passwords known to be stolen, looked up in a list on this machine (ASVS 6.2.12). Nothing is asked outside."""

import hashlib
import os
from pathlib import Path
from typing import Final

from django.core.exceptions import ValidationError

from trimops.accounts.models import User

HEX: Final = 40
STEP: Final = 4096


def is_listed(file: Path, password: str) -> bool:
    """Whether `file` holds it: lines `SHA-1 in hex` or `SHA-1:how often`, in the order of the hashes.

    So lists of stolen passwords are commonly handed out (from memory). SHA-1 is their choice, and guards nothing here.
    A list of 40 GB is asked by some thirty reads. OSError where it cannot be read.
    """
    wanted = hashlib.sha1(password.encode(), usedforsecurity=False).hexdigest().upper().encode()
    with file.open("rb") as lines:
        low, high = 0, os.fstat(lines.fileno()).st_size
        # because: below one step reading on is quicker than halving, and no line is as long
        while high - low > STEP:
            middle = (low + high) // 2
            lines.seek(middle)
            lines.readline()
            line = lines.readline()
            # because: behind the last line there is none, and the last one may be it
            if line and line[:HEX].upper() < wanted:
                low = middle
            else:
                high = middle
        lines.seek(low)
        if low:
            lines.readline()
        while line := lines.readline():
            found = line[:HEX].upper()
            if found >= wanted:
                return found == wanted
    return False


class StolenPasswordsValidator:
    """Refuses what the list holds that `TRIMOPS_STOLEN_PASSWORDS` names."""

    def __init__(self, file: str) -> None:
        self.file = Path(file)

    def validate(self, password: str, user: User | None = None) -> None:
        if is_listed(self.file, password):
            raise ValidationError(
                "This password was stolen somewhere and is tried by strangers: take another one."
            )

    def get_help_text(self) -> str:
        return "None that is known to be stolen."
