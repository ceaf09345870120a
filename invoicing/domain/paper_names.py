"""Names of files that hold a paper."""

import re

NOT_IN_NAMES = re.compile(r"[^\w.-]+", re.ASCII)


def paper_name(number: str) -> str:
    """A number as the name of a file, whatever its prefix holds: "INV/26 1" is "INV-26-1"."""
    return NOT_IN_NAMES.sub("-", number).strip("-.") or "paper"
