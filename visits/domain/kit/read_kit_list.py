"""A list of consumables, with the stock that is there already, from a table with its headings first."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import TypeVar

from visits.domain.kit.kit_list_cells import Reader
from visits.domain.kit.kit_list_columns import PER, STOCK, STOCK_OF, USE, Heads, read_heads
from visits.domain.kit.kit_sheet import OCCASIONS, Occasion

K = TypeVar("K")
MOST_LINES = 500
"""Far more than a trimmer carries; each is written with its recipe and stock while the others wait."""


class UnreadableKitList(ValueError):
    """The list as a whole cannot be read; the message says what to do."""


@dataclass(frozen=True)
class KitRow:
    """One line, counted as the file shows it (headings are line 1). `told` holds the cells that say something, by the
    names of `KitSheet` and `code`, `expires_on`, `cost`; a use of 0 takes that line out of the recipe."""

    line: int
    name: str
    told: Mapping[str, object] = field(default_factory=dict)
    recipe: Mapping[Occasion, Decimal] = field(default_factory=dict)
    stock: Mapping[str, Decimal] = field(default_factory=dict)
    faults: tuple[str, ...] = ()


@dataclass(frozen=True)
class KitList:
    """All lines, and the headings that were passed over."""

    rows: tuple[KitRow, ...]
    passed_over: tuple[str, ...] = ()


def read_kit_list(table: Sequence[Sequence[str]], places: Sequence[str]) -> KitList:
    """Every line with what is wrong with it. `places` are the names of the stock places.

    UnreadableKitList when no column names the consumable, a heading stands twice, or there are more than `MOST_LINES`.
    """
    head = next((line for line, cells in enumerate(table) if any(cells)), None)
    if head is None:
        raise UnreadableKitList("The list is empty.")
    if len(table) - head - 1 > MOST_LINES:
        raise UnreadableKitList(f"The list has more than {MOST_LINES} lines: read it in by parts.")
    heads = read_heads(table[head], places)
    if "name" not in {column.key for column in heads.columns.values()}:
        raise UnreadableKitList("No column is headed “name”: name the column with the consumables so.")
    if heads.twice:
        raise UnreadableKitList(f"Two columns say the same: take one “{heads.twice[0]}” out.")
    rows = [
        _read_row(line, cells, heads) for line, cells in enumerate(table, 1) if line > head + 1 and any(cells)
    ]
    return KitList(tuple(_with_doubles(rows)), heads.unknown)


def _read_row(line: int, cells: Sequence[str], heads: Heads) -> KitRow:
    faults: list[str] = []

    def read(index: int, heading: str, reader: Reader) -> object:
        """What the cell says; None where it is empty or faulty."""
        cell = _bare(cells[index]) if index < len(cells) else ""
        try:
            return reader(cell) if cell else None
        except ValueError as fault:
            faults.append(f"{heading}: {fault}")
            return None

    told = {column.key: read(index, column.heading, column.read) for index, column in heads.columns.items()}
    uses = {
        occasion: read(index, PER + OCCASIONS[occasion], USE) for index, occasion in heads.occasions.items()
    }
    stock = {place: read(index, STOCK_OF + place, STOCK) for index, place in heads.places.items()}
    name = str(told.pop("name", None) or "")
    if not name and not any(fault.startswith("name") for fault in faults):
        faults.append("name: say what it is")
    return KitRow(line, name, _said(told), _numbers(uses), _numbers(stock), tuple(faults))


def _bare(cell: str) -> str:
    """Without the apostrophes that keep a spreadsheet from running a text (see `csv_file`); one blank between words."""
    bare = cell[1:] if cell.startswith("'") else cell
    for sign in "=+-@\uff1d\uff0b\uff0d\uff20":
        bare = bare.replace(f";'{sign}", f";{sign}")
    return " ".join(bare.split())


def _said(told: Mapping[str, object]) -> dict[str, object]:
    return {key: value for key, value in told.items() if value is not None}


def _numbers(told: Mapping[K, object]) -> dict[K, Decimal]:
    return {key: value for key, value in told.items() if isinstance(value, Decimal)}


def _with_doubles(rows: Sequence[KitRow]) -> list[KitRow]:
    times = Counter(row.name.casefold() for row in rows if row.name)
    return [
        replace(row, faults=(*row.faults, f"name: “{row.name}” stands twice in the list"))
        if times[row.name.casefold()] > 1
        else row
        for row in rows
    ]
