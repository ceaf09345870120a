"""Lines of the stock ledger in words: what happened, and of a count or a correction both figures."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from django.db.models import Sum

from trimops.kernel.scope import Scope
from visits.domain.kit.hundredths import exact_sum
from visits.domain.kit.read_quantity import quantity_words
from visits.domain.kit.stock_kinds import MovementKind, Unit, UseOf
from visits.models import Consumable, StockMovement
from visits.selectors.kit.item_ledger import LedgerRow

NO_WORDS = {
    UseOf.COW: "Used with a cow",
    UseOf.VISIT: "Used with the visit",
    UseOf.WASH: "Mixed for a wash-down",
}


@dataclass(frozen=True)
class ToldLine:
    """A line with what it says. `more` is its second part, in small: the recipe, a note, both figures."""

    row: LedgerRow
    what: str
    more: str = ""

    @property
    def line(self) -> StockMovement:
        return self.row.line


def told_lines(scope: Scope, item: Consumable, rows: Sequence[LedgerRow]) -> list[ToldLine]:
    """One page of the ledger in words. One query."""
    said = _cows_said(scope, item, [row.line for row in rows])
    return [ToldLine(row, *_words(row, Unit(item.unit), said)) for row in rows]


def _cows_said(scope: Scope, item: Consumable, lines: Iterable[StockMovement]) -> dict[int, Decimal]:
    """What the cows of the visits say that somebody corrected by hand."""
    visits = {line.visit_id for line in lines if line.use_of == UseOf.BY_HAND and line.visit_id}
    rows = StockMovement.objects.within(scope).filter(consumable=item, trim__visit__in=visits).order_by()
    sums = rows.values_list("trim__visit").annotate(Sum("quantity"))
    return {visit: -exact_sum(total) for visit, total in sums if visit}


def _words(row: LedgerRow, unit: Unit, said: Mapping[int, Decimal]) -> tuple[str, str]:
    line = row.line
    if line.kind == MovementKind.USED:
        return _use_words(line, unit, said)
    if line.kind == MovementKind.COUNTED:
        return _count_words(row, unit)
    if line.kind == MovementKind.MOVED:
        return ("Moved away" if line.quantity < 0 else "Moved here"), line.note
    if line.kind == MovementKind.WRITTEN_OFF:
        return f"Written off: {line.get_because_display().lower()}", line.note
    return "Bought", line.note


def _use_words(line: StockMovement, unit: Unit, said: Mapping[int, Decimal]) -> tuple[str, str]:
    use_of = UseOf(line.use_of)
    if use_of is UseOf.BY_HAND:
        extra = quantity_words(abs(line.quantity), unit)
        more = "more" if line.quantity < 0 else "less"
        cows = quantity_words(said.get(line.visit_id or 0, Decimal(0)), unit)
        return "Corrected by hand", f"{extra} {more} than noted before; the cows say {cows}"
    words = NO_WORDS[use_of]
    return (words if line.quantity < 0 else "Taken back, as noted otherwise"), line.note


def _count_words(row: LedgerRow, unit: Unit) -> tuple[str, str]:
    """What was counted, and what the ledger had before this line."""
    had = quantity_words(row.balance - row.line.quantity, unit)
    counted = row.line.count.counted if row.line.count else row.balance
    found = f"counted {quantity_words(counted, unit)}; the ledger had {had}"
    return "Counted", f"{found}. {row.line.note}" if row.line.note else found
