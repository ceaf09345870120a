"""Who a paper is from."""

from dataclasses import dataclass

from reportlab.platypus import Flowable, Table

from trimops.paper.colours import Tint
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import LEAD, SMALL, style, words


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
    left = [words(letterhead.name, style(LEAD, bold=True))]
    if lines:
        left.append(words(lines, style(SMALL, tint=Tint.QUIET)))
    other = words(right, style(SMALL, tint=Tint.QUIET, align="right"))
    commands = [
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), 0),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 8),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
    ]
    return Table([[left, other]], colWidths=[TEXT_WIDTH * 0.68, TEXT_WIDTH * 0.32], style=commands)
