"""PDF, CII and UBL of an invoice being issued, each with its fingerprint."""

import hashlib
from datetime import date
from io import BytesIO

import pytest
from pypdf import PdfReader

from invoicing.documents.invoice_check import InvoiceIncomplete
from invoicing.models import InvoicePapers
from invoicing.services.keep_papers import keep_papers
from tests.invoicing.drafts import plain_draft


@pytest.fixture
def numbered(house):
    """A draft as it stands in the middle of being issued."""
    row = plain_draft(house)
    row.number, row.issued_on, row.due_on = "INV-2026-0001", date(2026, 3, 2), date(2026, 4, 1)
    return row


def test_all_three_are_kept_with_their_fingerprints(numbered):
    papers = InvoicePapers.objects.within(numbered.scope).get(pk=keep_papers(invoice=numbered).pk)
    for name, begin in (("pdf", b"%PDF-"), ("cii", b"<?xml"), ("ubl", b"<?xml")):
        kept = bytes(getattr(papers, name))
        assert kept.startswith(begin)
        assert getattr(papers, f"{name}_sha256") == hashlib.sha256(kept).hexdigest()
    assert bytes(papers.cii) != bytes(papers.ubl)


def test_the_xml_lies_inside_the_pdf_byte_by_byte(numbered):
    papers = keep_papers(invoice=numbered)
    inside = PdfReader(BytesIO(papers.pdf)).attachments
    assert list(inside.values()) == [[papers.cii]]


def test_the_same_invoice_gives_the_same_bytes(numbered):
    first, second = keep_papers(invoice=numbered), keep_papers(invoice=numbered)
    assert (first.pdf_sha256, first.cii_sha256, first.ubl_sha256) == (
        second.pdf_sha256,
        second.cii_sha256,
        second.ubl_sha256,
    )


def test_where_no_e_invoice_can_be_made_the_reason_is_kept_with_a_pdf(numbered):
    numbered.buyer = {"name": "Low Croft", "address": "Down the track", "country": ""}
    papers = keep_papers(invoice=numbered)
    assert (papers.cii, papers.ubl, papers.cii_sha256, papers.ubl_sha256) == (b"", b"", "", "")
    assert papers.no_xml_because
    assert papers.pdf.startswith(b"%PDF-")


def test_a_paper_that_lacks_something_is_not_kept(numbered):
    numbered.buyer = {"name": "", "address": "", "country": "GB"}
    with pytest.raises(InvoiceIncomplete):
        keep_papers(invoice=numbered)
    assert not InvoicePapers.objects.within(numbered.scope).exists()
