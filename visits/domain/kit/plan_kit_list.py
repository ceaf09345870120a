"""What a list of consumables would do to those the business has: shown before, done after."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from decimal import Decimal

from visits.domain.kit.kit_list_columns import COLUMNS, PER
from visits.domain.kit.kit_sheet import OCCASIONS, KitSheet, Occasion
from visits.domain.kit.read_kit_list import KitList, KitRow
from visits.domain.kit.stock_kinds import ConsumableKind, Unit

HEADING = {column.key: column.heading for column in COLUMNS}
STOCK_KEYS = frozenset({"code", "expires_on", "cost"})
NEEDED = ("kind", "unit")
POURED = (Unit.ML, Unit.GRAM)


@dataclass(frozen=True)
class KnownItem:
    """A consumable that is there; `has_lines`: something stands in its ledger."""

    key: int
    sheet: KitSheet
    has_lines: bool = False


@dataclass(frozen=True)
class FirstStock:
    """Stock of a new consumable that is there already, by place; of one lot, with what it cost where that is known."""

    by_place: Mapping[str, Decimal] = field(default_factory=dict)
    code: str = ""
    expires_on: date | None = None
    cost: Decimal | None = None

    @property
    def total(self) -> Decimal:
        return sum(self.by_place.values(), Decimal(0))


@dataclass(frozen=True)
class Change:
    """One thing that a line says otherwise, as words."""

    heading: str
    before: str
    after: str


@dataclass(frozen=True)
class PlannedItem:
    """What one line comes to. `key` is None of a new consumable; `note` says what of the line is passed over."""

    line: int
    sheet: KitSheet
    key: int | None = None
    stock: FirstStock = FirstStock()
    changes: tuple[Change, ...] = ()
    note: str = ""


@dataclass(frozen=True)
class KitPlan:
    """Nothing of it may be done while something is `refused`."""

    new: tuple[PlannedItem, ...] = ()
    changed: tuple[PlannedItem, ...] = ()
    unchanged: tuple[PlannedItem, ...] = ()
    refused: tuple[KitRow, ...] = ()

    @property
    def notes(self) -> list[PlannedItem]:
        return [item for item in (*self.new, *self.changed, *self.unchanged) if item.note]


def plan_kit_list(found: KitList, known: Sequence[KnownItem]) -> KitPlan:
    """Lines find their consumable by its name, whatever its capitals. Empty cells change nothing."""
    by_name = {item.sheet.name.casefold(): item for item in known}
    planned: list[PlannedItem] = []
    refused: list[KitRow] = []
    for row in found.rows:
        item = by_name.get(row.name.casefold())
        faults = row.faults or (_faults_of_known(row, item) if item else _faults_of_new(row))
        if faults:
            refused.append(replace(row, faults=faults))
        else:
            planned.append(_changed(row, item) if item else _new(row))
    return KitPlan(
        tuple(item for item in planned if item.key is None),
        tuple(item for item in planned if item.key is not None and item.changes),
        tuple(item for item in planned if item.key is not None and not item.changes),
        tuple(refused),
    )


def _faults_of_new(row: KitRow) -> tuple[str, ...]:
    faults = [f"{HEADING[key]}: needed for a new consumable" for key in NEEDED if key not in row.told]
    if row.told.get("unit") in POURED and "pack" not in row.told:
        faults.append("pack: say how much one tin, bag or canister holds")
    below = [place for place, quantity in row.stock.items() if quantity < 0]
    faults += [f"stock in {place}: is below nought; write what lies there" for place in below]
    if not any(row.stock.values()) and any(key in row.told for key in STOCK_KEYS):
        faults.append("stock: a lot, a date or a cost stands there, but no stock in any place")
    return (*faults, *_faults_of_pack(row, row.told.get("unit"), row.told.get("pack")))


def _faults_of_pack(row: KitRow, unit: object, pack: object) -> tuple[str, ...]:
    """What is counted in pieces comes in whole packs and lies in whole pieces."""
    if not isinstance(unit, Unit) or not unit.is_whole:
        return ()
    faults = [
        f"stock in {place}: write whole pieces" for place, quantity in row.stock.items() if quantity % 1
    ]
    if isinstance(pack, Decimal) and pack % 1:
        faults.append(f"pack: what is counted in {unit.label} comes in whole packs")
    return tuple(faults)


def _faults_of_known(row: KitRow, item: KnownItem) -> tuple[str, ...]:
    unit = row.told.get("unit", item.sheet.unit)
    if item.has_lines and unit is not item.sheet.unit:
        words = f"unit: it is counted in “{item.sheet.unit.label}” since its ledger began; add it under another name"
        return (words,)
    return _faults_of_pack(replace(row, stock={}), unit, row.told.get("pack", item.sheet.pack))


def _new(row: KitRow) -> PlannedItem:
    kind, unit = row.told["kind"], row.told["unit"]
    if not isinstance(kind, ConsumableKind) or not isinstance(unit, Unit):
        raise TypeError("a new consumable has a kind and a unit")
    sheet = _with(KitSheet(row.name, kind, unit), row)
    code, expires_on, cost = (row.told.get(key) for key in ("code", "expires_on", "cost"))
    stock = FirstStock(
        {place: quantity for place, quantity in row.stock.items() if quantity},
        code if isinstance(code, str) else "",
        expires_on if isinstance(expires_on, date) else None,
        cost if isinstance(cost, Decimal) else None,
    )
    return PlannedItem(row.line, sheet, stock=stock)


def _changed(row: KitRow, item: KnownItem) -> PlannedItem:
    sheet = replace(_with(item.sheet, row), name=item.sheet.name)
    note = "stock is read in with a new consumable only: count the place instead" if row.stock else ""
    return PlannedItem(row.line, sheet, item.key, changes=_changes(item.sheet, sheet), note=note)


def _with(sheet: KitSheet, row: KitRow) -> KitSheet:
    told = {key: value for key, value in row.told.items() if key not in STOCK_KEYS}
    recipe = {key: quantity for key, quantity in {**sheet.recipe, **row.recipe}.items() if quantity}
    return replace(sheet, **told, recipe=recipe)  # type: ignore[arg-type]  # because: read column by column


def _changes(before: KitSheet, after: KitSheet) -> tuple[Change, ...]:
    keys = [column.key for column in COLUMNS if column.key not in STOCK_KEYS]
    fields = [
        Change(HEADING[key], cell_words(getattr(before, key)), cell_words(getattr(after, key)))
        for key in keys
        if getattr(before, key) != getattr(after, key)
    ]
    uses = [
        Change(PER + words, _use(before, occasion), _use(after, occasion))
        for occasion, words in OCCASIONS.items()
        if before.recipe.get(occasion) != after.recipe.get(occasion)
    ]
    return (*fields, *uses)


def _use(sheet: KitSheet, occasion: Occasion) -> str:
    return cell_words(sheet.recipe.get(occasion))


def cell_words(value: object) -> str:
    """A value as a cell of the list says it; nothing is an empty one."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Decimal):
        return f"{value.normalize():f}"
    return str(value)
