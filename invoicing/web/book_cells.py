"""Cells of the books in words for a page."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from invoicing.documents.book_table import CURRENCY, BookTable
from trimops.web.templatetags.figures import count
from visits.documents.data_table import Cell

SHORT = 16
"""Signs that are held together on one line: a number, a day, an amount."""


@dataclass(frozen=True)
class ShownCell:
    """What stands in a cell, and whether it is kept on one line."""

    words: str

    @property
    def is_short(self) -> bool:
        return len(self.words) <= SHORT


@dataclass(frozen=True)
class ShownTable:
    """`heads` as the tag of a sheet takes them; a row of sums for each currency."""

    heads: str
    rows: list[list[ShownCell]]
    sums: list[list[ShownCell]]


def shown_table(book: BookTable, rows: Sequence[tuple[Cell, ...]]) -> ShownTable:
    """`rows` are those of one page of the table, in the columns that it has room for; sums are of the whole table.

    The currency is left out where there is only one: the sum in the title has it.
    """
    sums = book.sums()
    shown = [heading for heading in book.shown if heading != CURRENCY or len(sums) > 1]
    places = [book.column(heading) for heading in shown]
    heads = [f"{heading} #" if _holds_numbers(book, heading) else heading for heading in shown]
    return ShownTable(
        " | ".join(heads),
        [[ShownCell(cell_words(row[place])) for place in places] for row in rows],
        [_sum_row(shown, currency, added) for currency, added in sums],
    )


def cell_words(value: Cell) -> str:
    """A day (4 Mar 2026), a number with its decimals, or the text itself; nothing is nothing."""
    if value is None:
        return ""
    if isinstance(value, date):
        return f"{value:%-d %b %Y}"
    return count(value) if isinstance(value, Decimal | int) else value


def _holds_numbers(book: BookTable, heading: str) -> bool:
    place = book.column(heading)
    return heading in book.summed or any(isinstance(row[place], Decimal | int) for row in book.table.rows[:1])


def _sum_row(shown: Sequence[str], currency: str, sums: dict[str, Decimal]) -> list[ShownCell]:
    """The words in the first column, each sum in its own."""
    words = {CURRENCY: currency, **{heading: cell_words(amount) for heading, amount in sums.items()}}
    return [
        ShownCell("In all" if number == 0 else words.get(heading, "")) for number, heading in enumerate(shown)
    ]
