"""Cells of a list of consumables: what stands in one is read, ValueError says in words what to mend."""

import re
from collections.abc import Callable, Mapping
from datetime import date, datetime
from decimal import Decimal
from typing import TypeVar

from visits.domain.kit.read_quantity import read_quantity
from visits.domain.kit.stock_kinds import ConsumableKind, Unit

T = TypeVar("T")
Reader = Callable[[str], object]

_KINDS: dict[str, ConsumableKind] = {
    **{kind.value: kind for kind in ConsumableKind},
    **{kind.label.casefold(): kind for kind in ConsumableKind},
    **{"glove": ConsumableKind.GLOVES, "bandage": ConsumableKind.WRAP, "bandages": ConsumableKind.WRAP},
}
_UNITS: dict[str, Unit] = {
    **{unit.value: unit for unit in Unit},
    **dict.fromkeys(("piece", "pieces", "pc", "pcs"), Unit.EACH),
    **{"pairs": Unit.PAIR, "gram": Unit.GRAM, "grams": Unit.GRAM, "gr": Unit.GRAM},
    **dict.fromkeys(("millilitre", "millilitres", "milliliter", "milliliters"), Unit.ML),
}
_ADDRESS = re.compile(r"[^@\s,;]+@[^@\s,;]+\.[^@\s,;]+")
_DAY_FORMS = ("%Y-%m-%d", "%d/%m/%Y", "%d.%m.%Y", "%d-%m-%Y")


def text(most: int) -> Reader:
    """Words of `most` signs."""

    def read(cell: str) -> str:
        if len(cell) > most:
            raise ValueError(f"is longer than {most} signs")
        if not cell.isprintable():
            raise ValueError("holds a line end or a sign that cannot be shown")
        return cell

    return read


def figure(least: str, most: str, places: int = 2) -> Reader:
    """A number from `least` to `most`."""

    def read(cell: str) -> Decimal:
        found = read_quantity(cell, places)
        if not Decimal(least) <= found <= Decimal(most):
            raise ValueError(f"“{cell}” is not from {least} to {most}")
        return found

    return read


def whole(least: int, most: int) -> Reader:
    """A whole number from `least` to `most`."""

    def read(cell: str) -> int:
        found = read_quantity(cell)
        if found != found.to_integral_value() or not least <= found <= most:
            raise ValueError(f"“{cell}” is no whole number from {least} to {most}")
        return int(found)

    return read


def kind(cell: str) -> ConsumableKind:
    """A kind by its name or its word on the page."""
    return _one_of(_KINDS, cell, "kind", [known.label for known in ConsumableKind])


def unit(cell: str) -> Unit:
    """A unit by its short or long word."""
    return _one_of(_UNITS, cell, "unit", [known.label for known in Unit])


def address(cell: str) -> str:
    """A mail address, as far as its shape tells."""
    if len(cell) > 254 or not _ADDRESS.fullmatch(cell):
        raise ValueError(f"“{cell}” is no mail address")
    return cell


def yes(cell: str) -> bool:
    """Yes or no, in several ways."""
    answer = {"yes": True, "y": True, "1": True, "true": True, "x": True} | dict.fromkeys(
        ("no", "n", "0", "false"), False
    )
    if cell.casefold() not in answer:
        raise ValueError(f"“{cell}” is neither yes nor no")
    return answer[cell.casefold()]


def day(cell: str) -> date:
    """A day, year first or day first."""
    for form in _DAY_FORMS:
        try:
            found = datetime.strptime(cell, form).date()  # noqa: DTZ007 because: a day, not an instant
        except ValueError:
            continue
        if 1990 <= found.year <= 2100:
            return found
    raise ValueError(f"“{cell}” is no day; write 2027-03-02 or 02/03/2027")


def _one_of(known: Mapping[str, T], cell: str, what: str, words: list[str]) -> T:
    found = known.get(cell.casefold())
    if found is None:
        raise ValueError(f"“{cell}” is no {what}; write {', '.join(words[:-1])} or {words[-1]}")
    return found
