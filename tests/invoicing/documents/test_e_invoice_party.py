from dataclasses import replace

from invoicing.documents.e_invoice_party import buyer_terms, is_outside_tax, seller_terms


def test_parties_are_named_by_their_tax_numbers(electronic):
    paper = electronic()
    assert seller_terms(paper)["vat_identifier"] == "GB980780684"
    assert "tax_identifier" not in seller_terms(paper)
    assert buyer_terms(paper)["vat_identifier"] == "IE6433435F"


def test_a_seller_without_a_tax_number_is_named_by_its_registration(electronic):
    paper = electronic()
    terms = seller_terms(replace(paper, seller=replace(paper.seller, tax_number="", registration="12 345")))
    assert (terms["legal_identifier"], terms["tax_identifier"]) == ("12 345", "12 345")
    assert "vat_identifier" not in terms


def test_outside_of_tax_no_tax_number_stands(electronic):
    paper = electronic()
    rows = (replace(paper.tax_rows[1], category="O"),)
    outside = replace(paper, tax_rows=rows, seller=replace(paper.seller, registration="12 345"))
    assert is_outside_tax(outside)
    assert not is_outside_tax(paper)
    assert not {"vat_identifier", "tax_identifier"} & {*seller_terms(outside), *buyer_terms(outside)}


def test_an_address_of_many_lines_keeps_them_all(electronic):
    paper = electronic()
    terms = buyer_terms(replace(paper, buyer=replace(paper.buyer, address=("a", "b", "c", "d"))))
    assert (terms["addr_l1"], terms["addr_l2"], terms["addr_l3"]) == ("a", "b", "c, d")


def test_the_electronic_address_is_the_mail_address(electronic):
    terms = seller_terms(electronic())
    assert (terms["einvoicing_addr"], terms["einvoicing_addr_schemeid"]) == (
        "office@skelderdale.example",
        "EM",
    )
    assert buyer_terms(electronic())["einvoicing_addr_schemeid"] == ""
