"""Why a paper cannot be an e-invoice of EN 16931. The official rules' names stand beside each reason."""

from collections.abc import Iterator

from invoicing.documents.e_invoice_party import is_outside_tax
from invoicing.documents.e_invoice_shape import xml_text
from invoicing.documents.invoice_content import InvoicePaper, Party, TaxRow
from invoicing.domain.amounts import tax_is_near
from invoicing.domain.code_lists import COUNTRIES, CURRENCIES, EXEMPTION_CODES
from trimops.kernel.errors import RuleBroken
from trimops.paper.figures import rate

CATEGORIES = ("S", "Z", "E", "AE", "O")


class CannotBeElectronic(RuleBroken):
    """The paper stays a PDF; the message says why, in less than 200 signs."""

    code = "cannot_be_electronic"


def refuse_if_not_electronic(paper: InvoicePaper) -> None:
    """Raises CannotBeElectronic with the first reason against it."""
    for reason in reasons_against(paper):
        raise CannotBeElectronic(reason)


def reasons_against(paper: InvoicePaper) -> Iterator[str]:
    """Every reason why no e-invoice can be made of it; none: it can."""
    if not xml_text(paper.number or ""):
        yield "A draft has no e-invoice: issue it first."  # BR-02
    if not paper.lines:
        yield "There is no line on it."  # BR-16
    if not all(xml_text(line.description) for line in paper.lines):
        yield "A line has no description."  # BR-25
    if paper.corrects and not xml_text(paper.corrects.invoice_number):
        yield "The credit note does not name the invoice that it corrects."  # BR-55
    yield from _currency(paper)
    yield from _party("seller", paper.seller)
    yield from _party("buyer", paper.buyer)
    yield from _identified(paper)
    yield from _categories(paper)
    for row in paper.tax_rows:
        yield from _tax_row(row)


def _currency(paper: InvoicePaper) -> Iterator[str]:
    if paper.currency not in CURRENCIES:  # BR-CL-04
        yield f"{paper.currency} is not a currency of ISO 4217."
    if paper.digits > 2:  # BR-DEC-*
        yield f"{paper.currency} has {paper.digits} decimals; an e-invoice takes two at most."


def _party(who: str, party: Party) -> Iterator[str]:
    if not xml_text(party.name):
        yield f"The {who} has no name."  # BR-06, BR-07
    if party.country not in COUNTRIES:  # BR-09, BR-11, BR-CL-14
        yield f"The country of the {who} is missing or is not one of ISO 3166-1 (two letters, such as GB or IE)."


def _identified(paper: InvoicePaper) -> Iterator[str]:
    """BR-CO-26, BR-O-02, BR-S-02 and its like; BR-AE-02 for the buyer."""
    seller, buyer = paper.seller, paper.buyer
    if is_outside_tax(paper) and not seller.registration:
        yield (
            f"What is outside of {paper.tax_name} is billed without a {paper.tax_name} number: "
            "the business needs a registration number."
        )
    elif not (seller.tax_number or seller.registration):
        yield f"The business has neither a {paper.tax_name} number nor a registration number."
    reverse = any(row.category == "AE" for row in paper.tax_rows)
    if reverse and not (buyer.tax_number or buyer.registration):
        yield f"Reverse charge needs the {paper.tax_name} number of the buyer."


def _categories(paper: InvoicePaper) -> Iterator[str]:
    found = {row.category for row in paper.tax_rows}
    for category in sorted(found - set(CATEGORIES)):
        yield f"Tax category {category} is none of {', '.join(CATEGORIES)}."
    if "O" in found and len(paper.tax_rows) > 1:  # BR-O-11
        yield f"What is outside of {paper.tax_name} needs an invoice of its own: it may not stand beside other rates."


def _tax_row(row: TaxRow) -> Iterator[str]:
    if row.category == "S" and row.percent <= 0:  # BR-S-05
        yield "A standard rate of 0 % is not one: use zero-rated (Z) or exempt (E)."
    if row.category != "S" and (row.percent or row.tax):  # BR-Z-05, BR-E-05, BR-AE-05, BR-O-09
        yield f"Tax category {row.category} carries no tax, so its rate must be 0 %."
    if row.category == "E" and not (xml_text(row.exempt_reason) or row.exempt_code):  # BR-E-10
        yield "What is exempt needs the reason why."
    if row.exempt_code and row.exempt_code not in EXEMPTION_CODES:  # BR-CL-22
        yield f"“{row.exempt_code}” is not a code of the VATEX list."
    if not tax_is_near(row.taxable, row.percent, row.tax):  # BR-S-09, BR-CO-17
        yield (
            f"Tax of {row.tax} on {row.taxable} is more than one unit away from {rate(row.percent)}: "
            "the official rules refuse it. Round once per rate instead."
        )
