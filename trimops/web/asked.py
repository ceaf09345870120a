"""What an address asks for, in any form that somebody typed."""

from django.http import QueryDict


def number_asked(text: str | None) -> int | None:
    """A key out of the address, if it is one."""
    return int(text) if text and text.isascii() and text.isdigit() and len(text) < 16 else None


def words_asked(told: QueryDict, most: int) -> str:
    """What is searched for (`q`), of `most` signs; PostgreSQL takes no NUL in a text."""
    return told.get("q", "").replace("\0", "").strip()[:most]
