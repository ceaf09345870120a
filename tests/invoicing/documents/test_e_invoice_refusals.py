from dataclasses import replace
from datetime import date
from decimal import Decimal as D

import pytest

from invoicing.documents.e_invoice_refusals import (
    CannotBeElectronic,
    reasons_against,
    refuse_if_not_electronic,
)
from invoicing.documents.invoice_content import Correction
from trimops.kernel.errors import RuleBroken


def test_a_sound_paper_has_no_reason_against_it(electronic):
    assert list(reasons_against(electronic())) == []
    refuse_if_not_electronic(electronic())


def test_the_refusal_is_one_that_the_site_knows_to_answer():
    assert issubclass(CannotBeElectronic, RuleBroken)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"number": None}, "issue it first"),
        ({"number": " \x00"}, "issue it first"),
        ({"corrects": Correction("\x0b", date(2026, 12, 1), "x")}, "does not name"),
        ({"lines": ()}, "no line"),
        ({"currency": "KWD", "digits": 3}, "two at most"),
        ({"currency": "XXZ"}, "not a currency"),
    ],
)
def test_what_cannot_be_said_is_refused(electronic, changes, words):
    with pytest.raises(CannotBeElectronic, match=words):
        refuse_if_not_electronic(electronic(**changes))


@pytest.mark.parametrize(
    ("who", "changes", "words"),
    [
        ("seller", {"country": ""}, "country of the seller"),
        ("buyer", {"country": "UK"}, "country of the buyer"),
        ("buyer", {"name": " "}, "buyer has no name"),
        ("seller", {"tax_number": ""}, "neither a VAT number nor a registration"),
    ],
)
def test_a_party_that_is_not_known_well_enough_is_refused(electronic, who, changes, words):
    paper = electronic()
    with pytest.raises(CannotBeElectronic, match=words):
        refuse_if_not_electronic(replace(paper, **{who: replace(getattr(paper, who), **changes)}))


@pytest.mark.parametrize(
    ("row", "changes", "words"),
    [
        (0, {"category": "K"}, "category K is none of"),
        (0, {"percent": D(0), "tax": D(0)}, "standard rate of 0"),
        (1, {"category": "Z", "percent": D(5)}, "carries no tax"),
        (1, {"exempt_reason": " "}, "reason why"),
        (1, {"exempt_code": "VATEX-EU-XX"}, "VATEX list"),
        (0, {"tax": D("94.48")}, "more than one unit"),
        (1, {"category": "O"}, "invoice of its own"),
    ],
)
def test_a_tax_row_that_the_official_rules_refuse_is_refused_before(electronic, row, changes, words):
    paper = electronic()
    rows = list(paper.tax_rows)
    rows[row] = replace(rows[row], **changes)
    assert any(words in reason for reason in reasons_against(replace(paper, tax_rows=tuple(rows))))


def test_a_line_of_signs_that_xml_cannot_hold_has_no_description(electronic):
    paper = electronic()
    lines = (replace(paper.lines[0], description=" \x00"), *paper.lines[1:])
    assert list(reasons_against(replace(paper, lines=lines))) == ["A line has no description."]


def test_reverse_charge_needs_the_number_of_the_buyer(electronic):
    paper = electronic(tax_rows=(replace(electronic().tax_rows[1], category="AE"),))
    assert list(reasons_against(paper)) == []
    unknown = replace(paper, buyer=replace(paper.buyer, tax_number=""))
    assert list(reasons_against(unknown)) == ["Reverse charge needs the VAT number of the buyer."]


def test_outside_of_tax_the_business_needs_a_registration_number(electronic):
    paper = electronic(tax_rows=(replace(electronic().tax_rows[1], category="O"),))
    assert [reason for reason in reasons_against(paper) if "registration number" in reason]


def test_each_reason_fits_where_it_is_kept(electronic):
    """InvoicePapers.no_xml_because holds 200 signs."""
    paper = electronic()
    rows = (replace(paper.tax_rows[0], tax=D("99999999.99"), exempt_code="X" * 30, percent=D("13.55")),)
    spoilt = replace(
        paper, seller=replace(paper.seller, tax_number="", country=""), tax_rows=rows, tax_name="Q" * 20
    )
    assert max(map(len, reasons_against(spoilt))) <= 200
