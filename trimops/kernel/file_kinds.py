"""Whether a file is what its name says (ASVS 5.2.2): the ending against the first bytes."""

from collections.abc import Callable, Collection
from typing import Final

# because: signs at the beginning by which these are known wherever they go (PDF, PNG, JPEG, GIF, ZIP, gzip, programs)
BINARY: Final = (
    b"%PDF",
    b"\x89PNG",
    b"\xff\xd8\xff",
    b"GIF8",
    b"PK\x03\x04",
    b"\x1f\x8b",
    b"\x7fELF",
    b"MZ\x90",
)
BOMS: Final = (b"\xef\xbb\xbf", b"\xff\xfe", b"\xfe\xff")
HEAD: Final = 1024

TABLES: Final = ("csv", "txt", "tsv", "xlsx")
STATEMENTS: Final = ("xml", "camt", "c53", "csv", "txt")
PICTURES: Final = ("png", "jpg", "jpeg")
CALENDARS: Final = ("ics",)


def ending_fault(name: str, content: bytes, endings: Collection[str]) -> str:
    """What is wrong with a file of that name and (at least the first `HEAD` bytes of) content; "" where nothing is.

    A name without an ending says nothing, so only the content is left to judge it, as everywhere.
    """
    _, point, ending = name.rpartition(".")
    ending = ending.lower()
    if not point:
        return ""
    if ending not in endings:
        listed = ", ".join(f".{each}" for each in endings)
        return f"The name ends in “.{ending[:20]}”; what can be read here ends in {listed}."
    if not _LOOKS[ending](content[:HEAD]):
        return f"The name ends in “.{ending}”, but that is not what the file holds: save it anew where it came from."
    return ""


def _is_text(head: bytes) -> bool:
    return not head.startswith(BINARY)


def _is_zip(head: bytes) -> bool:
    return head.startswith(b"PK\x03\x04")


def _is_xml(head: bytes) -> bool:
    # because: UTF-16 has a zero beside each letter
    return _plain(head).startswith(b"<")


def _is_jpeg(head: bytes) -> bool:
    return head.startswith(b"\xff\xd8\xff")


def _is_png(head: bytes) -> bool:
    return head.startswith(b"\x89PNG\r\n\x1a\n")


def _is_calendar(head: bytes) -> bool:
    return _plain(head).upper().startswith(b"BEGIN:VCALENDAR")


def _plain(head: bytes) -> bytes:
    for bom in BOMS:
        head = head.removeprefix(bom)
    return head.replace(b"\x00", b"").lstrip()


_LOOKS: Final[dict[str, Callable[[bytes], bool]]] = {
    "csv": _is_text,
    "txt": _is_text,
    "tsv": _is_text,
    "xlsx": _is_zip,
    "xml": _is_xml,
    "camt": _is_xml,
    "c53": _is_xml,
    "png": _is_png,
    "jpg": _is_jpeg,
    "jpeg": _is_jpeg,
    "ics": _is_calendar,
}
