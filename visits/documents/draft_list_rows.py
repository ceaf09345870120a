"""The rows of the draft list: a box to tick, the number large, why, and what to mind."""

from collections.abc import Iterable

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Table

from trimops.paper.colours import Meaning, Tint
from trimops.paper.drawing import Drawing, Pen, Polygon, box
from trimops.paper.figures import counted
from trimops.paper.signs import sign_drawing
from trimops.paper.styles import style, words
from trimops.paper.tables import Cell, Column, Command, ruled_table
from trimops.paper.to_pdf import DrawingBlock
from visits.documents.draft_list_content import DraftCow, DraftGroup

_COLUMNS = (
    Column("", 13 * mm),
    Column("Cow", 38 * mm),
    Column("", 9 * mm),
    Column("Why", 120 * mm),
)
_BOX = 6.5


def draft_table(groups: Iterable[DraftGroup]) -> Table:
    """Cows under the words of their need; those words stay on the page of their first cow."""
    rows: list[list[Cell]] = []
    together: list[tuple[int, int]] = []
    more: list[Command] = []
    for group in groups:
        if not group.cows:
            continue
        first = len(rows)
        rows.append(
            [words(f"{group.need}: {counted(len(group.cows), 'cow')}", style(12, bold=True)), "", "", ""]
        )
        more.append(("SPAN", (0, first + 1), (-1, first + 1)))
        more.append(("TOPPADDING", (0, first + 1), (-1, first + 1), 10))
        rows += [_row(cow) for cow in group.cows]
        together.append((first, first + 1))
        together += [(row, row) for row in range(first + 2, len(rows))]
    more.append(("VALIGN", (0, 1), (-1, -1), "MIDDLE"))
    return ruled_table(_COLUMNS, rows, groups=together, more=more)


def _row(cow: DraftCow) -> list[Cell]:
    why: list[Flowable] = [words(_at_most(cow.why), style(12))]
    if cow.warning:
        why.append(words(_at_most(cow.warning), style(12, bold=True, tint=Tint.DUE)))
    mark: Cell = DrawingBlock(sign_drawing(Meaning.DUE, 5)) if cow.warning else ""
    return [DrawingBlock(_tick_box()), words(cow.number, style(_size_of(cow.number), bold=True)), mark, why]


def _at_most(text: str, letters: int = 400) -> str:
    """A row of a wall list is a few lines, never a page."""
    return text if len(text) <= letters else f"{text[:letters].rstrip()}…"


def _size_of(number: str) -> float:
    """Large as far as the column lets it: a herd number at 20 points, a whole ear tag smaller."""
    return 20.0 if len(number) <= 8 else 12.0


def _tick_box() -> Drawing:
    square = Polygon(box(0.3, 0.3, _BOX - 0.3, _BOX - 0.3), None, Pen(Tint.INK, 0.4))
    return Drawing(_BOX, _BOX, (square,), title="box to tick")
