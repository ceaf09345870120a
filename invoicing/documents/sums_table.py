"""Sums on a money paper: words on the left, amounts on the right, a line above what is to be paid."""

from collections.abc import Sequence

from reportlab.lib.colors import HexColor
from reportlab.platypus import Flowable, Table

from trimops.paper.colours import HEX, Tint
from trimops.paper.styles import LEAD, TEXT, style, words
from trimops.paper.tables import bare_table

Sum = tuple[str, str]
LARGE = LEAD + 1
"""Size of what is to be paid, in points."""
_INK = HexColor(HEX[Tint.INK])


def sums_table(told: Sequence[Sum], last: Sum, widths: Sequence[float], below: Sequence[Sum] = ()) -> Table:
    """Row below row; `last` stands large and bold under the line, `below` plain after it."""
    rows = [*map(_row, told), _row(last, LARGE, bold=True), *map(_row, below)]
    table = bare_table(rows, widths, pad=2)
    table.setStyle([("LINEABOVE", (0, len(told)), (-1, len(told)), 1.0, _INK)])
    return table


def _row(told: Sum, size: float = TEXT, *, bold: bool = False) -> list[Flowable]:
    what, amount = told
    return [words(what, style(size, bold=bold)), words(amount, style(size, bold=bold, align="right"))]
