"""The cows one by one: those with something to tell in a table with soles drawn, the others named together."""

from collections.abc import Iterable

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph

from trimops.paper.colours import Tint
from trimops.paper.headings import section
from trimops.paper.set_text import set_text
from trimops.paper.styles import style, words
from trimops.paper.tables import Cell, Column, Command, ruled_table
from trimops.paper.to_pdf import DrawingBlock
from trimops.paper.typefaces import BODY, BOLD
from visits.documents.sole_drawing import small_sole_drawing
from visits.documents.visit_report_said import (
    READING_AID,
    VET_ADVISED,
    CowSaid,
    FootSaid,
    FoundSaid,
    ReportSaid,
)
from visits.documents.visit_report_sizes import Sizes

_COLUMNS = (
    Column("Cow", 18 * mm),
    Column("Foot", 18 * mm),
    Column("Sole", 13 * mm),
    Column("Lesion seen", 69 * mm),
    Column("Done", 40 * mm),
    Column("Look again", 22 * mm),
)
_NUMBER, _SHORT_NUMBER = 11.0, 6
# Points: the legend, the head of the table and its first cow stay on one page.
_FIRST_COW_ROOM = 130.0


def cows_part(said: ReportSaid, sizes: Sizes) -> list[Flowable]:
    """How to read the drawings, the table of cows with something to tell, and the cows with nothing to tell."""
    parts: list[Flowable] = []
    if said.cows:
        rows, groups = _rows(said.cows, sizes)
        parts += [*section("Cow by cow", _FIRST_COW_ROOM), words(READING_AID, style(sizes.legend, after=4))]
        parts.append(ruled_table(_COLUMNS, rows, groups=groups, more=_plain(sizes), head_size=sizes.heads))
    if said.plain_cows:
        parts += section("Nothing found", 40)
        parts += [words(line, style(sizes.read, after=2)) for line in said.plain_cows]
    return parts


def _plain(sizes: Sizes) -> tuple[Command, ...]:
    """Cells of one short line need no paragraph."""
    return (
        ("TOPPADDING", (0, 1), (-1, -1), sizes.above),
        ("BOTTOMPADDING", (0, 1), (-1, -1), sizes.below),
        ("FONT", (0, 1), (0, -1), BOLD, _NUMBER, _NUMBER * 1.3),
        ("FONT", (1, 1), (1, -1), BODY, sizes.table, sizes.table * 1.3),
        ("FONT", (5, 1), (5, -1), BOLD, sizes.table, sizes.table * 1.3),
    )


def _rows(cows: Iterable[CowSaid], sizes: Sizes) -> tuple[list[list[Cell]], list[tuple[int, int]]]:
    """Rows, one to a foot, and the (first, last) row of each cow."""
    rows: list[list[Cell]] = []
    groups: list[tuple[int, int]] = []
    for cow in cows:
        first = len(rows)
        rows += [_foot_row(foot, sizes) for foot in cow.feet]
        if cow.note:
            rows.append(["", "", "", words(cow.note, style(sizes.table)), "", ""])
        rows[first][0] = _number(cow)
        groups.append((first, len(rows) - 1))
    return rows, groups


def _number(cow: CowSaid) -> Cell:
    if len(cow.number) <= _SHORT_NUMBER and cow.number.isascii() and not cow.walked:
        return cow.number
    number = words(cow.number, style(_NUMBER if len(cow.number) <= _SHORT_NUMBER else 9.0, bold=True))
    return [number, words(cow.walked, style(8.5, tint=Tint.QUIET))] if cow.walked else number


def _foot_row(foot: FootSaid, sizes: Sizes) -> list[Cell]:
    seen = [_found(found, sizes) for found in foot.found]
    if foot.vet:
        seen.append(set_text([(VET_ADVISED, True), (f": {foot.vet}.", False)], style(sizes.table)))
    return [
        "",
        foot.foot,
        DrawingBlock(small_sole_drawing(foot.sole, sizes.sole)),
        seen or "",
        words(foot.done, style(sizes.table)),
        foot.again,
    ]


def _found(found: FoundSaid, sizes: Sizes) -> Paragraph:
    vet = [(". ", False), (found.vet, True)] if found.vet else []
    return set_text([(found.lesion, True), (found.rest, False), *vet], style(sizes.table))
