"""A cow as she stands on file, and what a row of a herd list would change about her."""

from dataclasses import dataclass, replace
from datetime import date

from farms.domain.cow_status import CowStatus
from farms.domain.herd_list import HerdRow

FIELDS = (
    "status",
    "born_on",
    "calved_on",
    "lactation",
    "calving_due",
    "dry_off_due",
    "left_on",
    "official_tag",
    "electronic_id",
)


@dataclass(frozen=True)
class KnownCow:
    """A cow as she stands on file."""

    id: int
    number: str
    official_tag: str = ""
    electronic_id: str = ""
    status: CowStatus | None = None
    born_on: date | None = None
    calved_on: date | None = None
    calving_due: date | None = None
    dry_off_due: date | None = None
    lactation: int | None = None
    left_on: date | None = None


@dataclass(frozen=True)
class FieldChange:
    """One thing that changes, in words, before and after."""

    field: str
    before: str
    after: str


def changes_to(row: HerdRow, cow: KnownCow) -> tuple[FieldChange, ...]:
    """What the row says otherwise than the file. Empty cells change nothing.

    The number of a lactation hangs on the calving that began it; without any calving it changes nothing.
    """
    told = replace(row, lactation=None) if not (row.calved_on or cow.calved_on) else row
    changes = [
        FieldChange(name.replace("_", " "), _text(getattr(cow, name)), _text(getattr(told, name)))
        for name in FIELDS
        if getattr(told, name) not in (None, "") and getattr(told, name) != getattr(cow, name)
    ]
    if row.number != cow.number:
        changes.append(FieldChange("number", cow.number, row.number))
    return tuple(changes)


def _text(value: object) -> str:
    return "" if value is None else str(value)
