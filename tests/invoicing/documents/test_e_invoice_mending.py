"""Each fault of the library is shown first, so that a version without it is noticed."""

from dataclasses import replace
from datetime import date
from decimal import Decimal as D

from facturx import generate_xml
from lxml import etree

from invoicing.documents.e_invoice import cii_xml, ubl_xml
from invoicing.documents.e_invoice_mending import mend_cii, mend_ubl
from invoicing.documents.e_invoice_schema import schema_faults
from invoicing.documents.e_invoice_terms import business_terms
from invoicing.documents.invoice_content import Correction, Payment

BELGIAN = "BE68539007547034"


def _bare(paper, flavor):
    return etree.fromstring(
        generate_xml(
            business_terms(paper), flavor=flavor, level="en16931", check_xsd=False, check_schematron=False
        )
    )


def _local(root, name):
    return [node for node in root.iter() if etree.QName(node).localname == name]


def test_an_iban_that_fails_its_countrys_own_check_stays_an_iban(electronic):
    root = _bare(electronic(payment=Payment(iban=BELGIAN, account_name="X")), "factur-x")
    assert _local(root, "ProprietaryID")
    mend_cii(root, BELGIAN)
    assert [node.text for node in _local(root, "IBANID")] == [BELGIAN]
    assert not _local(root, "ProprietaryID")
    assert schema_faults(root) == []


def test_the_rounding_amount_is_in_the_currency_of_the_invoice(electronic):
    paper = electronic(rounding=D("0.01"), due=D("520.90"))
    root = _bare(paper, "ubl-2.1")
    assert _local(root, "PayableRoundingAmount")[0].get("currencyID") == "EUR"
    mend_ubl(root, "GBP")
    assert _local(root, "PayableRoundingAmount")[0].get("currencyID") == "GBP"
    assert b'<cbc:PayableRoundingAmount currencyID="GBP">0.01<' in ubl_xml(paper)


def test_a_credit_note_has_its_tax_point_where_its_schema_wants_it(electronic):
    paper = electronic(corrects=Correction("INV-1", date(2026, 12, 1), "Wrong."), paid=D(0), due=D("620.89"))
    root = _bare(replace(paper, number="CN-1"), "ubl-2.1")
    assert schema_faults(root)
    mend_ubl(root, "GBP")
    assert schema_faults(root) == []


def test_no_version_is_said(electronic):
    assert b"UBLVersionID" not in ubl_xml(electronic())
    assert b"IBANID" not in cii_xml(electronic())
