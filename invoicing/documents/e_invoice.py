"""An issued invoice or credit note as e-invoice of EN 16931: CII (as inside the hybrid PDF) and UBL 2.1.

The library writes the tree; it is mended where it errs, checked against its schema, and each amount is read back and
held against the paper, since the official rules let tax be wrong by up to 0.99. The official rules themselves (XSLT 2)
run in the tests (tests/standards), not here: their engine may end the process that it runs in. The library is loaded
with the first e-invoice: most processes write none.
"""

from importlib import import_module

from lxml import etree

from invoicing.documents.e_invoice_mending import mend_cii, mend_ubl
from invoicing.documents.e_invoice_reading import amounts_differ
from invoicing.documents.e_invoice_refusals import CannotBeElectronic, refuse_if_not_electronic
from invoicing.documents.e_invoice_schema import schema_faults
from invoicing.documents.e_invoice_terms import business_terms
from invoicing.documents.invoice_content import InvoicePaper

__all__ = ["CannotBeElectronic", "cii_xml", "ubl_xml"]

_PARSER = etree.XMLParser(resolve_entities=False, no_network=True)


def cii_xml(paper: InvoicePaper) -> bytes:
    """UN/CEFACT Cross Industry Invoice, profile EN 16931. The same paper gives the same bytes.

    Raises CannotBeElectronic with the reason why none can be made.
    """
    root = _written(paper, "factur-x")
    mend_cii(root, paper.payment.iban)
    return _checked(root, paper)


def ubl_xml(paper: InvoicePaper) -> bytes:
    """UBL 2.1 Invoice or CreditNote. The same paper gives the same bytes; raises CannotBeElectronic."""
    root = _written(paper, "ubl-2.1")
    mend_ubl(root, paper.currency)
    return _checked(root, paper)


def _written(paper: InvoicePaper, flavor: str) -> etree._Element:
    refuse_if_not_electronic(paper)
    # because: its own schematron check posts the invoice to a local server and is silent when none answers
    written: bytes = import_module("facturx").generate_xml(
        business_terms(paper), flavor=flavor, level="en16931", check_xsd=False, check_schematron=False
    )
    return etree.fromstring(written, _PARSER)


def _checked(root: etree._Element, paper: InvoicePaper) -> bytes:
    faults = [*schema_faults(root), *amounts_differ(root, paper)]
    if faults:
        raise CannotBeElectronic(f"The e-invoice came out wrong: {faults[0]}"[:200])
    written: bytes = etree.tostring(root, xml_declaration=True, encoding="UTF-8")
    return written
