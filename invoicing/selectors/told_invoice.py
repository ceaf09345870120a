"""All that is told of one invoice besides the row itself."""

from collections.abc import Sequence
from dataclasses import dataclass

from invoicing.domain.amounts import TaxShare
from invoicing.models import Allocation, DocumentAmount, Invoice, InvoiceLine, InvoicePapers
from invoicing.selectors.kept_amounts import KeptRows, kept_amounts, kept_rows
from invoicing.selectors.settled_by import settled_by
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class ToldInvoice:
    """`credit_notes` are keys of issued ones that correct it; `papers` without their bytes, None for a draft."""

    lines: Sequence[InvoiceLine]
    document_amounts: Sequence[DocumentAmount]
    tax_shares: Sequence[TaxShare]
    settled_by: Sequence[Allocation]
    credit_notes: Sequence[int]
    papers: InvoicePapers | None


def told_invoice(scope: Scope, invoice: Invoice) -> ToldInvoice:
    """Five queries. What was set against it is told to staff alone."""
    rows = kept_rows(invoice)
    _belong_to(invoice, rows)
    notes = Invoice.objects.within(scope).issued().credit_notes().filter(corrects=invoice).order_by("pk")
    papers = InvoicePapers.objects.within(scope).filter(invoice=invoice).defer("pdf", "cii", "ubl")
    return ToldInvoice(
        rows.lines,
        rows.whole,
        kept_amounts(invoice, rows).tax_shares,
        [] if scope.is_farm_client or not invoice.is_issued else settled_by(invoice),
        list(notes.values_list("pk", flat=True)),
        papers.first() if invoice.is_issued else None,
    )


def _belong_to(invoice: Invoice, rows: KeptRows) -> None:
    """Its currency is theirs; nothing is read again to know it."""
    for line in rows.lines:
        line.invoice = invoice
    for amount in rows.whole:
        amount.invoice = invoice
