import re
from dataclasses import replace
from decimal import Decimal as D

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from lxml import etree

from invoicing.documents.e_invoice import CannotBeElectronic, cii_xml, ubl_xml
from invoicing.documents.e_invoice_refusals import reasons_against

WRITERS = pytest.mark.parametrize("write", [cii_xml, ubl_xml])


@WRITERS
def test_the_same_paper_gives_the_same_bytes_and_another_other_ones(electronic, write):
    assert write(electronic()) == write(electronic())
    assert write(electronic()) != write(electronic(number="INV-2026-0043"))


@WRITERS
def test_it_says_the_profile_and_whose_it_is(electronic, write):
    text = write(electronic()).decode()
    assert ">urn:cen.eu:en16931:2017<" in text
    assert "J. Marsden &amp; Daughters" in text
    assert text.startswith("<?xml version='1.0' encoding='UTF-8'?>")


@WRITERS
def test_what_cannot_be_electronic_says_why(electronic, write):
    with pytest.raises(CannotBeElectronic, match="country of the buyer"):
        write(replace(electronic(), buyer=replace(electronic().buyer, country="")))


@WRITERS
def test_a_text_that_looks_like_xml_stays_a_text(electronic, write):
    paper = electronic(notes=("</cbc:Note><x>&lol; ]]>",))
    notes = [node.text for node in etree.fromstring(write(paper)).iter() if node.text and "lol" in node.text]
    assert notes == ["</cbc:Note><x>&lol; ]]>"]


@WRITERS
def test_an_amount_finer_than_its_currency_never_leaves_rounded(electronic, write):
    with pytest.raises(CannotBeElectronic, match="came out wrong: totals"):
        write(electronic(due=D("520.8901")))


@WRITERS
def test_nothing_is_written_to_the_paper(electronic, write):
    paper = electronic()
    write(paper)
    assert paper == electronic()


ANY = st.text(max_size=40)


@given(ANY, ANY, ANY, ANY)
@settings(max_examples=30, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_people_type_gives_a_sound_file_or_a_refusal(electronic, name, description, reason, number):
    """`ubl_xml` and `cii_xml` hold what they wrote against the schema and the paper themselves."""
    paper = electronic(number=number, notes=(reason,), order_number=reason)
    paper = replace(paper, buyer=replace(paper.buyer, name=name, address=(description, reason), email=reason))
    typed = replace(paper.lines[0], description=description, why=reason, unit=name)
    paper = replace(paper, lines=(typed, *paper.lines[1:]))
    reasons = list(reasons_against(paper))
    for write in (cii_xml, ubl_xml):
        if reasons:
            with pytest.raises(CannotBeElectronic, match=re.escape(reasons[0])):
                write(paper)
        else:
            assert etree.fromstring(write(paper)) is not None
