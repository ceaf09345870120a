"""Tables with thin rules whose rows, and groups of rows that belong together, never split over a page."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from reportlab.lib.colors import HexColor
from reportlab.platypus import Flowable, Table

from trimops.paper.colours import HEX, Tint
from trimops.paper.kept_rows import KeptRows
from trimops.paper.styles import SMALL, TEXT, Align, style, words
from trimops.paper.typefaces import BODY

Command = tuple[str, tuple[int, int], tuple[int, int], *tuple[object, ...]]
Cell = Flowable | Sequence[Flowable] | str
_INK: Final = HexColor(HEX[Tint.INK])
_RULE: Final = HexColor(HEX[Tint.RULE])


@dataclass(frozen=True)
class Column:
    """A column: its head, its width in points, and how its figures stand."""

    head: str
    width: float
    align: Align = "left"


def ruled_table(
    columns: Sequence[Column],
    rows: Sequence[Sequence[Cell]],
    *,
    groups: Iterable[tuple[int, int]] = (),
    more: Iterable[Command] = (),
    head_size: float = SMALL,
) -> Table:
    """A table whose head, set in `head_size` points, is repeated on every page.

    `groups` are (first row, last row) pairs, counted from 0 without the head, that stay on one page; a rule is
    drawn under each group, or under each row when there are none. `more` are further reportlab commands.
    """
    head: list[Cell] = [
        words(c.head, style(head_size, bold=True, tint=Tint.QUIET, align=c.align)) for c in columns
    ]
    together = list(groups) or [(i, i) for i in range(len(rows))]
    return KeptRows(
        [head, *[list(row) for row in rows]],
        colWidths=[column.width for column in columns],
        repeatRows=1,
        splitInRow=0,
        hAlign="LEFT",
        style=[*_base_commands(), *_group_commands(together), *more],
    )


def bare_table(rows: Sequence[Sequence[Cell]], widths: Sequence[float], *, pad: float = 0.0) -> Table:
    """Cells side by side without rules or room around them but `pad` points above and below each."""
    commands: list[Command] = [
        # Named although the cells hold their own text: reportlab would else set each cell up in Helvetica.
        ("FONT", (0, 0), (-1, -1), BODY, TEXT),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), pad),
        ("BOTTOMPADDING", (0, 0), (-1, -1), pad),
    ]
    return Table([list(row) for row in rows], colWidths=list(widths), style=commands, hAlign="LEFT")


def _base_commands() -> list[Command]:
    return [
        ("FONT", (0, 0), (-1, -1), BODY, TEXT),
        ("TEXTCOLOR", (0, 0), (-1, -1), _INK),
        ("VALIGN", (0, 0), (-1, -1), "TOP"),
        ("VALIGN", (0, 0), (-1, 0), "BOTTOM"),
        ("LEFTPADDING", (0, 0), (-1, -1), 0),
        ("RIGHTPADDING", (0, 0), (-1, -1), 8),
        ("RIGHTPADDING", (-1, 0), (-1, -1), 0),
        ("TOPPADDING", (0, 0), (-1, -1), 2.5),
        ("BOTTOMPADDING", (0, 0), (-1, -1), 3),
        ("LINEBELOW", (0, 0), (-1, 0), 1.0, _INK),
    ]


def _group_commands(groups: Sequence[tuple[int, int]]) -> list[Command]:
    commands: list[Command] = []
    for first, last in groups:
        commands.append(("LINEBELOW", (0, last + 1), (-1, last + 1), 0.5, _RULE))
        if last > first:
            commands.append(("NOSPLIT", (0, first + 1), (-1, last + 1)))
    return commands
