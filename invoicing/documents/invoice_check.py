"""A paper whose figures do not add up, or that lacks what the law wants on it, is not printed.

Sums after EN 16931 (BR-CO-10, 13, 14, 15, 16 and BR-S-08); contents after the VAT Regulations 1995, reg 14(1).
"""

from collections.abc import Iterator
from decimal import Decimal

from invoicing.documents.invoice_content import InvoicePaper
from trimops.kernel.errors import RuleBroken


class InvoiceIncomplete(RuleBroken):
    """The paper cannot be printed as it is; the message says what to mend."""

    code = "invoice_incomplete"


def check_invoice(paper: InvoicePaper) -> None:
    """Raises InvoiceIncomplete with every fault in one sentence each; a draft may still lack what is not known."""
    faults = list(_sums(paper))
    if paper.number is not None:
        faults += _contents(paper)
    if faults:
        raise InvoiceIncomplete(" ".join(faults))


def _sums(paper: InvoicePaper) -> Iterator[str]:
    per_rate: dict[tuple[str, Decimal], Decimal] = {}
    for line in paper.lines:
        key = (line.tax_category, line.tax_percent)
        per_rate[key] = per_rate.get(key, Decimal(0)) + line.net
    if {(row.category, row.percent): row.taxable for row in paper.tax_rows} != per_rate:
        yield "The net amounts by tax rate are not the sums of the lines."
    if sum((line.net for line in paper.lines), Decimal(0)) != paper.net:
        yield "The total without tax is not the sum of the lines."
    if sum((row.tax for row in paper.tax_rows), Decimal(0)) != paper.tax:
        yield "The tax is not the sum over the rates."
    if paper.net + paper.tax != paper.gross:
        yield "The total is not net and tax together."
    if paper.gross - paper.paid != paper.due:
        yield "What is due is not the total less what was paid."


def _contents(paper: InvoicePaper) -> Iterator[str]:
    if not paper.number or not paper.number.strip():
        yield "The number is empty."
    if not paper.lines:
        yield "There are no lines."
    if not (paper.seller.name and paper.seller.address):
        yield "The seller's name or address is missing."
    if not (paper.buyer.name and paper.buyer.address):
        yield "The buyer's name or address is missing."
    if any(not line.description.strip() for line in paper.lines):
        yield "A line has no description."
    if paper.tax and not paper.seller.tax_number:
        yield f"{paper.tax_name} is charged but the seller's {paper.tax_name} number is missing."
    if any(row.percent == 0 and row.category != "Z" and not row.exempt_reason for row in paper.tax_rows):
        yield f"A line without {paper.tax_name} needs the reason why."
