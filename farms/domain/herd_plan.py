"""What applying a herd list would change: computed first, shown, and only then done."""

from collections.abc import Sequence
from dataclasses import dataclass

from farms.domain.herd_list import HerdRow
from farms.domain.known_cow import FIELDS, FieldChange, KnownCow, changes_to
from farms.domain.match_cows import match_cows

__all__ = ["FIELDS", "ChangedCow", "FieldChange", "HerdPlan", "KnownCow", "RefusedRow", "plan_herd_import"]


@dataclass(frozen=True)
class ChangedCow:
    """A known cow whose row says something else; the row is applied as a whole."""

    cow_id: int
    row: HerdRow
    changes: tuple[FieldChange, ...]


@dataclass(frozen=True)
class RefusedRow:
    """A row that cannot be used until its faults are mended."""

    row: HerdRow
    faults: tuple[str, ...]


@dataclass(frozen=True)
class HerdPlan:
    """New cows, changed ones, how many stay as they are, and rows that cannot be used until mended."""

    new: tuple[HerdRow, ...]
    changed: tuple[ChangedCow, ...]
    unchanged: int
    refused: tuple[RefusedRow, ...]


def plan_herd_import(rows: Sequence[HerdRow], known: Sequence[KnownCow]) -> HerdPlan:
    """Sort the rows into new, changed, unchanged and refused. Once applied, a second run changes nothing.

    Rows are matched by official tag, then electronic id, then number (`match_cows`). Empty cells change
    nothing.
    """
    new: list[HerdRow] = []
    changed: list[ChangedCow] = []
    refused: list[RefusedRow] = []
    unchanged = 0
    for row, match in zip(rows, match_cows(rows, known), strict=True):
        if row.faults or match.fault:
            refused.append(RefusedRow(row, row.faults or (match.fault,)))
        elif match.cow is None:
            new.append(row)
        elif changes := changes_to(row, match.cow):
            changed.append(ChangedCow(match.cow.id, row, changes))
        else:
            unchanged += 1
    return HerdPlan(tuple(new), tuple(changed), unchanged, tuple(refused))
