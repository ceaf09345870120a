"""What was found this visit, as a table: cows with each lesion beside the visits compared."""

from reportlab.lib.units import mm
from reportlab.platypus import Flowable

from trimops.paper.fitting import fits
from trimops.paper.headings import section
from trimops.paper.styles import style, words
from trimops.paper.tables import Cell, Column, Command, ruled_table
from trimops.paper.typefaces import BODY, BOLD
from visits.documents.visit_report_said import CountRow, Counts
from visits.documents.visit_report_sizes import Sizes

_WIDTH = 180.0
_LESION_WIDTH = 54.0
# Points: the table stays on one page unless it is very long.
_HEAD_ROOM, _ROW_ROOM, _MOST_ROOM = 95.0, 19.0, 360.0


def findings_part(counts: Counts, sizes: Sizes) -> list[Flowable]:
    """Heading, the sentence that says how many cows this rests on, the table (if anything was found), and what the
    differences in it are worth."""
    room = min(_MOST_ROOM, _HEAD_ROOM + _ROW_ROOM * len(counts.rows))
    parts: list[Flowable] = [
        *section("What was found", room),
        words(counts.basis, style(sizes.read, after=4)),
    ]
    if counts.nothing:
        parts.append(words(counts.nothing, style(sizes.read)))
    if counts.rows:
        rows = [_row(row, sizes) for row in counts.rows]
        parts.append(ruled_table(_columns(counts), rows, more=_numbers(sizes), head_size=sizes.heads))
    if counts.difference:
        parts.append(words(counts.difference, style(sizes.read, before=4)))
    return parts


def _numbers(sizes: Sizes) -> tuple[Command, ...]:
    """Figures to the right, this visit's bold."""
    type_of = (sizes.table, sizes.table * 1.3)
    return (
        ("TOPPADDING", (0, 1), (-1, -1), sizes.above),
        ("BOTTOMPADDING", (0, 1), (-1, -1), sizes.below),
        ("ALIGN", (1, 1), (-1, -1), "RIGHT"),
        ("FONT", (0, 1), (0, -1), BODY, *type_of),
        ("FONT", (1, 1), (1, -1), BOLD, *type_of),
        ("FONT", (2, 1), (-1, -1), BODY, *type_of),
    )


def _columns(counts: Counts) -> list[Column]:
    wide = (_WIDTH - _LESION_WIDTH) / max(3, len(counts.heads))
    return [
        Column("Lesion seen", _LESION_WIDTH * mm),
        *[Column(f"{head.label}\n{head.seen}", wide * mm, "right") for head in counts.heads],
    ]


def _row(row: CountRow, sizes: Sizes) -> list[Cell]:
    is_plain = row.lesion.isascii() and fits(row.lesion, _LESION_WIDTH * mm - 8, sizes.table)
    return [row.lesion if is_plain else words(row.lesion, style(sizes.table)), row.cows, *row.before]
