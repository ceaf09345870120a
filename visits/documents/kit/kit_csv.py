"""The kit as tables: consumables with their recipes (which can be read in again), ledger, stock by place, lots."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime
from decimal import Decimal

from trimops.paper.days import clock
from visits.documents.data_table import Cell, DataTable, yes_no
from visits.domain.kit.kit_list_columns import COLUMNS, PER, STOCK_OF
from visits.domain.kit.kit_sheet import OCCASIONS, KitSheet
from visits.domain.kit.stock_kinds import Unit

_LOT_KEYS = frozenset({"code", "expires_on", "cost"})
_OWN = tuple(column for column in COLUMNS if column.key not in _LOT_KEYS)


@dataclass(frozen=True)
class KitLine:
    """A consumable and what lies of it where, by the name of the place."""

    sheet: KitSheet
    stock: Mapping[str, Decimal] = field(default_factory=dict)


@dataclass(frozen=True)
class LedgerLine:
    """One line of the stock ledger; `at` in the business's zone, `quantity` signed."""

    consumable: str
    unit: Unit
    at: datetime
    place: str
    what: str
    quantity: Decimal
    lot: str = ""
    cost: Decimal | None = None
    why: str = ""
    who: str = ""
    note: str = ""


@dataclass(frozen=True)
class LotLine:
    """What is left of a lot at one place."""

    consumable: str
    unit: Unit
    place: str
    code: str
    expires_on: date | None
    bought_on: date
    left: Decimal
    supplier: str = ""


def consumables_table(lines: Iterable[KitLine], places: Sequence[str]) -> DataTable:
    """A line a consumable; headed as `read_kit_list` reads it, so that it can be read in again."""
    headings = (
        *(column.heading for column in _OWN),
        *(PER + words for words in OCCASIONS.values()),
        *(STOCK_OF + place for place in places),
    )
    about = "Consumables: how they are bought, their recipes, and what lies where."
    return DataTable("consumables", about, headings, [_consumable(line, places) for line in lines])


def _consumable(line: KitLine, places: Sequence[str]) -> tuple[Cell, ...]:
    sheet = line.sheet
    return (
        *(_cell(getattr(sheet, column.key)) for column in _OWN),
        *(_cell(sheet.recipe.get(occasion)) for occasion in OCCASIONS),
        *(_cell(line.stock.get(place) or None) for place in places),
    )


def filled_columns(table: DataTable) -> DataTable:
    """The table without the columns in which nothing stands."""
    kept = [n for n in range(len(table.headings)) if any(row[n] not in (None, "") for row in table.rows)]
    rows = [tuple(row[n] for n in kept) for row in table.rows]
    return DataTable(table.name, table.about, tuple(table.headings[n] for n in kept), rows)


def ledger_table(lines: Iterable[LedgerLine]) -> DataTable:
    """Every line of the ledger, as it was written."""
    heads = ("consumable", "unit", "day", "time", "place", "what", "quantity", "lot", "cost", "why", "who")
    rows: list[tuple[Cell, ...]] = [
        (
            *(line.consumable, line.unit.label, line.at.date(), clock(line.at), line.place, line.what),
            *(_cell(line.quantity), line.lot, line.cost, line.why, line.who, line.note),
        )
        for line in lines
    ]
    about = "The stock ledger: what came and went, in the unit; minus is what went."
    return DataTable("ledger", about, (*heads, "note"), rows)


def stock_table(lines: Iterable[KitLine], places: Sequence[str]) -> DataTable:
    """A line a consumable, a column a place."""
    rows: list[tuple[Cell, ...]] = []
    for line in lines:
        stock = [line.stock.get(place, Decimal(0)) for place in places]
        cells = [_cell(quantity) for quantity in (*stock, sum(stock, Decimal(0)))]
        rows.append((line.sheet.name, line.sheet.size, line.sheet.unit.label, *cells))
    about = "What lies where now, by the ledger; minus means that the ledger is wrong: count."
    return DataTable("stock", about, ("name", "size", "unit", *map(_place, places), "in all"), rows)


def _place(name: str) -> str:
    """A place may bear the name of another heading."""
    return f"in {name}"


def lots_table(lines: Iterable[LotLine]) -> DataTable:
    """What is left of every lot, place by place."""
    heads = ("consumable", "unit", "place", "lot", "best before", "bought", "left", "supplier")
    rows: list[tuple[Cell, ...]] = [
        (
            *(line.consumable, line.unit.label, line.place, line.code, line.expires_on, line.bought_on),
            *(_cell(line.left), line.supplier),
        )
        for line in lines
    ]
    return DataTable("lots", "Lots that are not used up, and their dates.", heads, rows)


def _cell(value: object) -> Cell:
    """Yes or no in words, a number without idle zeros, nothing as nothing."""
    if isinstance(value, bool):
        return yes_no(value)
    if isinstance(value, Decimal):
        return Decimal(f"{value.normalize():f}")
    if isinstance(value, int | date) or value is None:
        return value
    return str(value)
