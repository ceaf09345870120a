"""What an issued invoice or credit note must say in words, besides its figures.

Sources: VAT Regulations 1995 (SI 1995/2518) reg 14(1); Directive 2006/112/EC art. 226 (contents), 230 (the tax in the
country's money) and 219 (a credit note names what it corrects); EN 16931 BR-S, BR-Z, BR-E, BR-AE (which rate a category
may have). Where a country wants more or less: ask your accountant.
"""

from collections.abc import Iterator

from invoicing.documents.invoice_content import Correction, InvoicePaper, TaxRow
from invoicing.domain.home_currency import home_currency


def missing_words(paper: InvoicePaper) -> list[str]:
    """A sentence for each thing that an issued paper lacks or says wrongly."""
    faults = [*_who(paper), *_what(paper), *_reverse_charge(paper)]
    for row in paper.tax_rows:
        faults += _rate(row, paper.tax_name)
    if paper.corrects:
        faults += _credit_note(paper, paper.corrects)
    return faults


def _who(paper: InvoicePaper) -> Iterator[str]:
    if not paper.number or not paper.number.strip():
        yield "The number is empty."
    if not (paper.seller.name and paper.seller.address):
        yield "The seller's name or address is missing."
    if not (paper.buyer.name and paper.buyer.address):
        yield "The buyer's name or address is missing."
    if paper.tax and not paper.seller.tax_number:
        yield f"{paper.tax_name} is charged but the seller's {paper.tax_name} number is missing."
    home = home_currency(paper.seller.country, paper.currency)
    if paper.tax and home and (paper.home_tax is None or paper.home_tax.currency != home):
        yield (
            f"{paper.tax_name} is charged in {paper.currency}: its total must stand in {home} too. "
            f"Put what one {paper.currency} is in {home} into the draft."
        )


def _what(paper: InvoicePaper) -> Iterator[str]:
    if not paper.lines:
        yield "There are no lines."
    if any(not line.description.strip() for line in paper.lines):
        yield "A line has no description."
    if any(not part.reason.strip() for part in paper.whole):
        yield "A discount or a charge on the whole has no reason."
    if any(part.amount < 0 for part in paper.whole):
        yield "A discount on the whole is written above nought; a negative one is a charge."


def _reverse_charge(paper: InvoicePaper) -> Iterator[str]:
    """Art. 226(4): the customer's number where the customer owes the tax."""
    if all(row.category != "AE" for row in paper.tax_rows):
        return
    if not paper.seller.tax_number:
        yield f"Reverse charge needs the seller's {paper.tax_name} number."
    if not paper.buyer.tax_number:
        yield f"Reverse charge needs the buyer's {paper.tax_name} number."


def _rate(row: TaxRow, tax_name: str) -> Iterator[str]:
    """Categories of UNCL 5305: standard, zero-rated, exempt, reverse charge, outside."""
    if row.category == "S" and not row.percent:
        yield f"A standard rate of {tax_name} is above 0 %: what has none is zero-rated or exempt."
    if row.category in ("Z", "E", "AE", "O") and row.percent:
        yield f"What is zero-rated, exempt, reverse charge or outside of {tax_name} has a rate of 0 %."
    if row.percent == 0 and row.category != "Z" and not row.exempt_reason:
        yield f"A line without {tax_name} needs the reason why."


def _credit_note(paper: InvoicePaper, corrects: Correction) -> Iterator[str]:
    if not corrects.invoice_number.strip() or corrects.invoice_number == paper.number:
        yield "A credit note names the invoice that it corrects."
    if corrects.invoice_date > paper.issue_date:
        yield "A credit note is not older than the invoice that it corrects."
    if not corrects.reason.strip():
        yield "A credit note says why it corrects."
    if paper.gross < 0:
        yield "A credit note gives money back: its total is not below nought."
