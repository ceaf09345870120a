"""Who a paper is from."""

from dataclasses import dataclass

from reportlab.platypus import Flowable

from trimops.paper.colours import Tint
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import LEAD, SMALL, style, words
from trimops.paper.tables import bare_table


@dataclass(frozen=True)
class Letterhead:
    """A business as it signs its papers; empty fields are left out."""

    name: str
    address: tuple[str, ...] = ()
    phone: str = ""
    email: str = ""


def letterhead_block(letterhead: Letterhead, right: str = "") -> Flowable:
    """Name and address on the left over one or two lines, `right` (a reference, a kind of paper) on the right."""
    lines = ", ".join(part for part in (*letterhead.address, letterhead.phone, letterhead.email) if part)
    left = [words(letterhead.name, style(LEAD, bold=True)), words(lines, style(SMALL, tint=Tint.QUIET))]
    other = words(right, style(SMALL, tint=Tint.QUIET, align="right"))
    return bare_table([[left, other]], [TEXT_WIDTH * 0.68, TEXT_WIDTH * 0.32], pad=4)
