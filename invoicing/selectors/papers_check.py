"""Whether every issued invoice has its papers as they left the house, and every number was given once."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from invoicing.domain.fingerprint import fingerprint
from invoicing.domain.invoice_number import invoice_number
from invoicing.models import Invoice, NumberSeries
from trimops.kernel.scope import Scope

AT_ONCE = 50
"""So many papers are held in memory together; one has some 60 kB."""


@dataclass(frozen=True)
class BookFault:
    """What is wrong with which number."""

    number: str
    words: str

    def __str__(self) -> str:
        return f"{self.number}: {self.words}"


def book_faults(scope: Scope) -> Iterator[BookFault]:
    """Every fault of a business's issued invoices; none when the books are whole. Reads every document."""
    yield from _papers(scope)
    yield from _numbers(scope)


def _papers(scope: Scope) -> Iterator[BookFault]:
    rows = Invoice.objects.within(scope).issued().select_related("papers").order_by("pk")
    for row in rows.iterator(chunk_size=AT_ONCE):
        if row.papers is None:
            yield BookFault(row.number, "has no papers")
            continue
        for name in ("pdf", "cii", "ubl"):
            kept, told = bytes(getattr(row.papers, name)), getattr(row.papers, f"{name}_sha256")
            if fingerprint(kept) != told:
                yield BookFault(row.number, f"its {name.upper()} is not the one that was issued")
        if not row.papers.pdf:
            yield BookFault(row.number, "has no PDF")


def _numbers(scope: Scope) -> Iterator[BookFault]:
    """Each series against the numbers that stand on invoices."""
    there = Counter(Invoice.objects.within(scope).issued().values_list("number", flat=True))
    given = set()
    for series in NumberSeries.objects.within(scope).order_by("prefix", "year"):
        given |= {invoice_number(series.prefix, series.year, place) for place in range(1, series.last + 1)}
    yield from (BookFault(number, "was given and is not there") for number in sorted(given - set(there)))
    yield from (BookFault(number, "was given by no series") for number in sorted(set(there) - given))
    yield from (BookFault(number, f"is there {count} times") for number, count in there.items() if count > 1)
