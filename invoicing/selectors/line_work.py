"""Why each line of an invoice is there: which cows, what was done."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from invoicing.models import BilledWork, Invoice, InvoiceLine


@dataclass(frozen=True)
class LineStory:
    """A line with the work it bills; `lost` are pieces of a line by hand that the work no longer shows."""

    line: InvoiceLine
    work: Sequence[BilledWork]
    lost: int = 0


def line_stories(invoice: Invoice, lost: frozenset[int] = frozenset()) -> list[LineStory]:
    """The lines in order, each with its work; `lost`: keys of claims whose work is gone. Two queries."""
    by_line = _by_line(invoice)
    lines = InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice).select_related("visit")
    return [
        LineStory(line, by_line.get(line.pk, []), sum(row.pk in lost for row in by_line.get(line.pk, [])))
        for line in lines
    ]


def left_off(invoice: Invoice) -> list[BilledWork]:
    """Work that the office struck from this invoice, and why."""
    rows = BilledWork.objects.within(invoice.scope).filter(invoice=invoice, line__isnull=True, holds=True)
    return list(rows.select_related("visit", "trim__cow").order_by("pk"))


def _by_line(invoice: Invoice) -> Mapping[int, list[BilledWork]]:
    found: defaultdict[int, list[BilledWork]] = defaultdict(list)
    rows = BilledWork.objects.within(invoice.scope).filter(line__invoice=invoice)
    for row in rows.select_related("trim").order_by("pk"):
        found[row.line_id or 0].append(row)
    return found
