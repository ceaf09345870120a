"""Words that must fit a given room in one line."""

from collections.abc import Iterable

from trimops.paper.typefaces import BODY, BOLD, width_of


def fits(text: str, room: float, size: float, *, bold: bool = False) -> bool:
    """Whether the text, set in that size, is no wider than `room` (same unit)."""
    return width_of(text, BOLD if bold else BODY, size) <= room


def fitting(text: str, room: float, size: float, *, bold: bool = False) -> str:
    """The text if it fits, else as much of it as does, with an ellipsis; at the least the ellipsis."""
    if fits(text, room, size, bold=bold):
        return text
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        if fits(text[:middle].rstrip() + "…", room, size, bold=bold):
            low = middle
        else:
            high = middle - 1
    return text[:low].rstrip() + "…"


def wrapped(text: str, room: float, size: float, *, lines: int, bold: bool = False) -> tuple[str, ...]:
    """The text broken at spaces into at most `lines` lines; what does not fit the last ends in an ellipsis."""
    done: list[str] = []
    rest = text.split()
    while len(rest) > 1 and len(done) < lines - 1 and not fits(" ".join(rest), room, size, bold=bold):
        taken = 1
        while fits(" ".join(rest[: taken + 1]), room, size, bold=bold):
            taken += 1
        done.append(fitting(" ".join(rest[:taken]), room, size, bold=bold))
        rest = rest[taken:]
    return *done, fitting(" ".join(rest), room, size, bold=bold)


def room_for(texts: Iterable[str], least: float, size: float, *, around: float = 0.0) -> float:
    """The room in which the widest of them fits in one line with `around` beside it, at the least `least`."""
    return max([least, *(width_of(text, BODY, size) + around for text in texts)])
