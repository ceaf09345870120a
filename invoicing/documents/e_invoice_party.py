"""Seller and buyer as the party group of EN 16931 (BG-4, BG-7) in the shape that the e-invoice library takes."""

from invoicing.documents.e_invoice_shape import Terms
from invoicing.documents.invoice_content import InvoicePaper, Party
from invoicing.domain.tax_number import tax_number_with_country


def seller_terms(paper: InvoicePaper) -> Terms:
    """BG-4. A seller without a tax number is named by its registration, which also serves as tax registration (BT-32).

    Outside of tax (category O) no tax number may stand there at all (BR-O-02).
    """
    party = paper.seller
    terms = _party(party)
    outside = is_outside_tax(paper)
    if not outside and party.tax_number:
        terms["vat_identifier"] = tax_number_with_country(party.tax_number, party.country)
    elif not outside:
        terms["tax_identifier"] = party.registration
    terms["legal_info"] = "; ".join(party.more)
    if party.phone or party.email:
        terms["contacts"] = [{"name": party.name, "phone": party.phone, "email": party.email}]
    return terms


def buyer_terms(paper: InvoicePaper) -> Terms:
    """BG-7."""
    party = paper.buyer
    terms = _party(party)
    if party.tax_number and not is_outside_tax(paper):
        terms["vat_identifier"] = tax_number_with_country(party.tax_number, party.country)
    return terms


def is_outside_tax(paper: InvoicePaper) -> bool:
    """Whether the paper bills what is not subject to tax (category O)."""
    return any(row.category == "O" for row in paper.tax_rows)


def _party(party: Party) -> Terms:
    """Name, address, registration and electronic address (scheme EM: e-mail).

    The address stays in lines as the business wrote it: which of them is the town nobody said, and only the country
    must be told apart (BR-09, BR-11).
    """
    first, second, *rest = (*party.address, "", "")
    return {
        "name": party.name,
        "legal_identifier": party.registration,
        "addr_l1": first,
        "addr_l2": second,
        "addr_l3": ", ".join(line for line in rest if line),
        "country_code": party.country,
        "einvoicing_addr": party.email,
        "einvoicing_addr_schemeid": "EM" if party.email else "",
    }
