"""Short columns beside each other; columns too long for that one after the other."""

from collections.abc import Sequence

from reportlab.platypus import Flowable, Spacer

from trimops.paper.tables import Cell, bare_table

_GAP = 12.0


def side_by_side(
    columns: Sequence[Sequence[Flowable]], width: float, tallest: float = 330.0
) -> list[Flowable]:
    """The columns in equal widths within `width` points; when any is taller than `tallest` points, stacked instead,
    so that each may run over a page."""
    each = (width - _GAP * (len(columns) - 1)) / len(columns)
    if max(_height(column, each) for column in columns) > tallest:
        return [flowable for column in columns for flowable in (*column, Spacer(0, 8))]
    cells: list[Cell] = []
    widths: list[float] = []
    for column in columns:
        cells += [list(column), ""]
        widths += [each, _GAP]
    return [bare_table([cells[:-1]], widths[:-1])]


def _height(column: Sequence[Flowable], width: float) -> float:
    return sum(f.wrap(width, 10_000)[1] + f.getSpaceBefore() + f.getSpaceAfter() for f in column)
