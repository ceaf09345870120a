"""The line at the foot of a page: whose paper it is and of what day; long names give way, the day never does."""

from collections.abc import Sequence

from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm

from trimops.paper.fitting import fits, fitting
from trimops.paper.typefaces import BODY, register_typefaces, width_of

FOOT_SIZE = 8.0
# Within the margins, beside "page 2 of 3".
FOOT_WIDTH = A4[0] - 60 * mm
_BETWEEN = " · "


def footing(names: Sequence[str], told: str) -> str:
    """ "Skelderdale Foot Trimming · High Thornbeck · visit of 1 Dec 2026": each name that is too long for its share of
    the room is cut with an ellipsis, `told` stands whole."""
    register_typefaces()
    whole = _BETWEEN.join([*names, told])
    if fits(whole, FOOT_WIDTH, FOOT_SIZE):
        return whole
    room = FOOT_WIDTH - width_of(_BETWEEN * len(names) + told, BODY, FOOT_SIZE)
    shorter = {}
    for left, name in zip(range(len(names), 0, -1), sorted(names, key=_wide), strict=True):
        shorter[name] = fitting(name, room / left, FOOT_SIZE)
        room -= _wide(shorter[name])
    return _BETWEEN.join([*(shorter[name] for name in names), told])


def _wide(text: str) -> float:
    return width_of(text, BODY, FOOT_SIZE)
