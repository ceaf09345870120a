"""A table of the books: shown on a page and written to a file from the same cells, so that their sums are one."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal

from invoicing.domain.minor_units import minor_digits
from trimops.kernel.money import round_money
from visits.documents.data_table import Cell, DataTable

ZERO = Decimal(0)
CURRENCY = "Currency"


@dataclass(frozen=True)
class BookTable:
    """A table for a file; `summed` are the headings that are added up, `shown` those that a page has room for.

    `main` is the one of the sums that tells the whole.
    """

    table: DataTable
    summed: tuple[str, ...]
    shown: tuple[str, ...]
    main: str

    def sums(self) -> list[tuple[str, dict[str, Decimal]]]:
        """By currency ("" where there is none): what the columns add up to, from the very cells of the table."""
        groups: dict[str, list[tuple[Cell, ...]]] = {}
        for row in self.table.rows:
            groups.setdefault(self._currency(row), []).append(row)
        return [(currency, self._added(groups[currency], currency)) for currency in sorted(groups)]

    def column(self, heading: str) -> int:
        return self.table.headings.index(heading)

    def _currency(self, row: tuple[Cell, ...]) -> str:
        return str(row[self.column(CURRENCY)]) if CURRENCY in self.table.headings else ""

    def _added(self, rows: Sequence[tuple[Cell, ...]], currency: str) -> dict[str, Decimal]:
        nought = round_money(ZERO, minor_digits(currency)) if currency else ZERO
        places = {heading: self.column(heading) for heading in self.summed}
        return {heading: _sum_of(row[place] for row in rows) or nought for heading, place in places.items()}


def _sum_of(cells: Iterable[Cell]) -> Decimal:
    return sum((cell for cell in cells if isinstance(cell, Decimal)), ZERO)
