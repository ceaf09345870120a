"""A table of plain values under headings in plain words: what a farm takes out."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

Cell = str | int | Decimal | date | None
"""Text, a number, a day, or nothing known. Never an instant: a spreadsheet knows no zone."""


@dataclass(frozen=True)
class DataTable:
    """`name` is that of the file and the sheet; every row has as many cells as there are headings."""

    name: str
    about: str
    headings: tuple[str, ...]
    rows: Sequence[tuple[Cell, ...]]

    def __post_init__(self) -> None:
        if len(set(self.headings)) < len(self.headings):
            raise ValueError(f"{self.name}: a heading stands twice")
        short = [row for row in self.rows if len(row) != len(self.headings)]
        if short:
            raise ValueError(f"{self.name}: {len(short[0])} cells under {len(self.headings)} headings")


def yes_no(value: bool) -> str:
    """A tick in words."""
    return "yes" if value else "no"
